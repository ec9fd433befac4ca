// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "cli/command.h"

namespace staddle::cli {

Command plant_command();

}  // namespace staddle::cli
