// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <stop_token>
#include <vector>

#include "staddle/base/parallel.h"
#include "staddle/optimise/stand_problem.h"
#include "staddle/optimise/stand_solution.h"

// How the value of a stand changes with one choice, everything else chosen anew by the
// same exact search: what a figure shows, and no second evaluator.
namespace staddle {

// The best regime that ends at each age of the lattice, by age; without one: the limits
// leave none.
struct ValueByFinalAge {
  struct At {
    Age final_harvest;
    std::optional<PricedRegime> best;       // of all
    std::optional<PricedRegime> unthinned;  // of those without thinning
  };
  std::vector<At> ages;
};

// The best regime whose first thinning is at this age and takes this share.
struct ValueMap {
  std::vector<Age> ages;
  std::vector<double> removals;                                 // rising
  std::vector<std::vector<std::optional<PricedRegime>>> cells;  // [removal][age]
};

struct ValueMapOptions {
  unsigned threads = 0;  // 0: all cores; changes no figure
  std::stop_token stop;
  Progress progress;  // may be empty
};

// REQUIRES: a standing stand's land value is filled in.
ValueByFinalAge value_by_final_age(const StandProblem& problem,
                                   const ValueMapOptions& options = {});
// Ages and shares at which no regime of the lattice starts, on the edges, are left out.
// Empty where the lattice has no thinning at all.
ValueMap value_map(const StandProblem& problem, const ValueMapOptions& options = {});

}  // namespace staddle
