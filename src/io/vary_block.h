// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "io/scenario_blocks.h"

namespace staddle {

// What the command vary is to vary; read after the blocks whose values it varies.
ScenarioBlock vary_block();

}  // namespace staddle
