// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "cli/command.h"

namespace staddle::cli {

// Every command, in the order in which help lists them.
const std::vector<Command>& commands();

// The command of this name; null where there is none.
const Command* find_command(const std::string& name);

}  // namespace staddle::cli
