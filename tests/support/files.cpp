// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/files.h"

#include <stdlib.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <system_error>

namespace staddle::support {

std::string read_file(const std::string& path) {
  std::ifstream stream(path, std::ios::binary);
  std::string content{std::istreambuf_iterator<char>(stream), {}};
  if (!stream) throw std::runtime_error("cannot read " + path);
  return content;
}

void write_file(const std::string& path, const std::string& content) {
  std::ofstream stream(path, std::ios::binary);
  stream << content;
  stream.close();
  if (!stream) throw std::runtime_error("cannot write " + path);
}

std::string in_source_tree(const std::string& relative_path) {
  // A path joins without the string concatenation in which GCC 12 sees, for certain
  // lengths of the constant, accesses out of bounds that are not there (bug 105329).
  return (std::filesystem::path(STADDLE_SOURCE_DIR) / relative_path).string();
}

std::vector<std::string> files_in_source_tree(const std::string& relative_directory,
                                              const std::string& ending) {
  const std::filesystem::path directory = in_source_tree(relative_directory);
  std::vector<std::string> files;
  if (!std::filesystem::is_directory(directory)) return files;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(directory)) {
    const std::string name = entry.path().lexically_relative(directory).generic_string();
    if (entry.is_regular_file() && name.ends_with(ending)) files.push_back(name);
  }
  std::sort(files.begin(), files.end());
  return files;
}

TemporaryDirectory::TemporaryDirectory()
    : path_((std::filesystem::temp_directory_path() / "staddle-test-XXXXXX").string()) {
  if (mkdtemp(path_.data()) == nullptr) {
    throw std::system_error(errno, std::generic_category(), "cannot make " + path_);
  }
}

TemporaryDirectory::~TemporaryDirectory() {
  std::error_code ignored;  // a destructor must not throw, and nothing depends on it
  std::filesystem::remove_all(path_, ignored);
}

std::string TemporaryDirectory::write(const std::string& name, const std::string& content) const {
  write_file(path(name), content);
  return path(name);
}

}  // namespace staddle::support
