// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <vector>

#include "staddle/optimise/stand_solution.h"
#include "vary/circumstances.h"

namespace staddle {

// Whether one pool for so many answers at so many rates is less work than as many
// searches. A rule of thumb on the size of the lattice alone, so that the same question
// always takes the same way.
bool pool_is_less_work(const StandProblem& problem, std::size_t answers, std::size_t rates);

// How many sets of rate and yearly costs these circumstances have.
std::size_t count_rates(const std::vector<const Circumstances*>& asked);

// The best regime of one stand under each circumstance, in their order; all grow alike.
// `land_values`: one per circumstance, for a standing stand. `told`: how many are done.
// REQUIRES: RegimePool::can_hold(problem).
std::vector<PricedRegime> best_by_pool(const StandProblem& problem,
                                       const std::vector<const Circumstances*>& asked,
                                       const std::vector<MoneyPerAcre>& land_values,
                                       unsigned threads,
                                       const std::function<void(std::size_t)>& told);

}  // namespace staddle
