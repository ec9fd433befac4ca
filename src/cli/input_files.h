// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/io/scenario_reader.h"
#include "staddle/report/owner_report.h"

namespace staddle::cli {

// The file that a report is asked on and every file that was read beside it, kept as they
// were read.
class InputFiles {
 public:
  // Reads `path`; "-" is standard input, which is then kept as scenario.json.
  static Result<InputFiles> read(const std::string& path);

  const std::string& text() const { return files_.front().text; }
  // Loads a file beside it and keeps it. It must not outlive this.
  FileLoader loader();
  std::vector<InputFile> take() { return std::move(files_); }

 private:
  InputFiles(std::string path, InputFile first) : path_(std::move(path)) {
    files_.push_back(std::move(first));
  }

  std::string path_;
  std::vector<InputFile> files_;
};

}  // namespace staddle::cli
