// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/input_files.h"

#include <algorithm>
#include <filesystem>

#include "cli/input_file.h"

namespace staddle::cli {

Result<InputFiles> InputFiles::read(const std::string& path) {
  Result<std::string> text = read_input(path);
  if (!text) return text.error();
  const std::string name =
      path == "-" ? "scenario.json" : std::filesystem::path(path).filename().string();
  return InputFiles(path, {name, std::move(text).value()});
}

FileLoader InputFiles::loader() {
  return [this, load = loader_beside(path_)](const std::string& beside) {
    Result<std::string> content = load(beside);
    const bool known = std::ranges::find(files_, beside, &InputFile::name) != files_.end();
    if (content && !known) files_.push_back({beside, *content});
    return content;
  };
}

}  // namespace staddle::cli
