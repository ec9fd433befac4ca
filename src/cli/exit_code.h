// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace staddle::cli {

// What the program tells the shell: the one table.
enum class ExitCode {
  done = 0,
  fault = 1,  // of the program itself, or of writing its output
  wrong_command_line = 2,
  wrong_input = 3,  // an input file is wrong or cannot be read
  no_regime = 4,    // the input is right, but no regime satisfies its limits
};

}  // namespace staddle::cli
