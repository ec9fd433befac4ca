// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/plant/plant_problem.h"
#include "staddle/scenario/scenario.h"

namespace staddle {

// The question of a scenario's establishment block: which way to start the next stand on
// this land. A standing stand counts as harvested.
// REQUIRES: a scenario that the reader accepted, with such a block.
PlantProblem make_plant_problem(const Scenario& scenario);

}  // namespace staddle
