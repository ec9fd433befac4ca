// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "cli/exit_code.h"
#include "staddle/base/error.h"

namespace staddle::cli {

// What running a command came to. The text goes to its output, the faults to standard
// error, one a line. A text beside another code than done is written all the same.
struct Outcome {
  ExitCode code = ExitCode::done;
  std::string text = {};
  Faults faults = {};
  bool written = false;  // the command wrote its output itself, piece by piece
};

Outcome done(std::string text);
// The command line names something that is not there.
Outcome wrong_command_line(const std::string& text, const std::string& hint = "");
// The faults of an input, each given the name of the file where it has none: exit 3, or 4
// where nothing is wrong but that no regime satisfies the limits.
Outcome wrong_input(Faults faults, const std::string& file);

}  // namespace staddle::cli
