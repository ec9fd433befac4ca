// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command.h"

namespace staddle::cli {

void add_output_options(CommandLine& line, const Words& formats, OutputOptions* options) {
  std::string meaning = "how to write it: " + formats.front() + " (the default)";
  for (std::size_t i = 1; i < formats.size(); ++i) {
    meaning += (i + 1 == formats.size() ? " or " : ", ") + formats[i];
  }
  line.choice("format", "FORMAT", meaning, formats, &options->format);
  line.value("output,o", "FILE", "write there, all or nothing, instead of to standard output",
             &options->file);
}

std::optional<Outcome> nameless_output(const OutputOptions& options) {
  if (!options.file || !options.file->empty()) return std::nullopt;
  return wrong_command_line("option --output: the name of the file is empty",
                            "- writes to standard output");
}

}  // namespace staddle::cli
