// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/scenario/scenario.h"
#include "staddle/vary/vary_problem.h"

namespace staddle {

// The question of a scenario's vary block.
// REQUIRES: a scenario that the reader accepted, with such a block.
VaryProblem make_vary_problem(const Scenario& scenario);

}  // namespace staddle
