// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace staddle::support {

// The whole file, byte for byte; throws std::runtime_error where that fails.
std::string read_file(const std::string& path);
void write_file(const std::string& path, const std::string& content);

// "scenarios/stand/a.json" -> that file in the source tree.
std::string in_source_tree(const std::string& relative_path);

// The regular files below a directory of the source tree whose names end in
// `ending`, relative to that directory, sorted. Empty where there is no directory.
std::vector<std::string> files_in_source_tree(const std::string& relative_directory,
                                              const std::string& ending);

// A directory of its own for one test, removed with all it holds when the guard goes.
class TemporaryDirectory {
 public:
  TemporaryDirectory();
  ~TemporaryDirectory();
  TemporaryDirectory(const TemporaryDirectory&) = delete;
  TemporaryDirectory& operator=(const TemporaryDirectory&) = delete;

  const std::string& path() const { return path_; }
  std::string path(const std::string& name) const { return path_ + "/" + name; }
  // Writes a file there and returns its path.
  std::string write(const std::string& name, const std::string& content) const;

 private:
  std::string path_;
};

}  // namespace staddle::support
