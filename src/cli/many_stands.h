// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "cli/command.h"

namespace staddle::cli {

// The words of "advise SCENARIO --stands FILE".
struct ManyStandsOptions {
  std::optional<std::string> file;
  std::optional<std::string> part;
  std::string threads = "0";
};
void add_many_stands_options(CommandLine& line, ManyStandsOptions& options);

// Answers every row of the file with the scenario's prices and choices, and writes each
// answer as soon as it is its turn. REQUIRES: options.file.
Outcome advise_many_stands(const std::string& scenario, const ManyStandsOptions& options,
                           bool exhaustive, const OutputOptions& output);

}  // namespace staddle::cli
