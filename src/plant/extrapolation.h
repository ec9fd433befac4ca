// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "staddle/plant/plant_problem.h"
#include "staddle/plant/plant_solution.h"

namespace staddle {

// Where an alternative leans on more than the equations were fitted to or the studies of
// site preparation print. REQUIRES: an answer with a best regime.
std::vector<Extrapolation> extrapolations_of(const PlantProblem& problem,
                                             const AlternativeAnswer& answer);

}  // namespace staddle
