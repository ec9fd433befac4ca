// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "cli/command.h"

namespace staddle::cli {

// What `staddle --help` shows: the commands in a line each.
std::string overview();

// What `staddle COMMAND --help` shows: what it answers, its words, an example.
std::string help_of(const Command& command);

// "usage: staddle advise SCENARIO [options]"
std::string usage_of(const Command& command, const CommandLine& line);

}  // namespace staddle::cli
