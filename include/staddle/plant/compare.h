// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/plant/plant_options.h"
#include "staddle/plant/plant_problem.h"
#include "staddle/plant/plant_solution.h"

namespace staddle {

// Solves the stand problem of every alternative that no gate shuts, ranks them by land
// expectation value (ties, tolerance::tie, go to the earlier), and tells gates and species.
//
// A break-even is sought from the response counted with outwards in steps of half a year or
// a foot, as far as an alternative may claim one, and between the two steps over which the
// order turns by a bracket of tolerance::root; where a limit makes the value jump it is the
// place of the jump. Told is the end of the last bracket at which the alternative is worth no
// less than the other. The same to the bit for any number of threads.
PlantSolution compare_establishments(const PlantProblem& problem, const PlantOptions& options = {});

}  // namespace staddle
