// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command_line.h"
#include "cli/exit_code.h"

namespace staddle::cli {

// Runs the program on the words after its name. Exceptions may leave it: what they mean
// for the exit status main decides.
ExitCode run_program(const Words& words);

}  // namespace staddle::cli
