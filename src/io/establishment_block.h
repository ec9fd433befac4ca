// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "io/scenario_blocks.h"

namespace staddle {

// Ways to start the next stand; read after the blocks that say how stands grow and which
// cuts are allowed.
ScenarioBlock establishment_block();

}  // namespace staddle
