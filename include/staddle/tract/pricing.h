// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <stop_token>
#include <vector>

#include "staddle/regime/regime.h"

namespace staddle {

// What a unit of each measure of an acre is worth to a plan, beyond its present value: the
// shadow prices of the limits, by plan year (0, the present, to the last). Alone the
// default is the question of a single stand: the most present value.
struct PlanWeights {
  double present_value = 1.0;               // per dollar of present value
  std::vector<double> income, cost;         // per undiscounted dollar; cost is positive
  std::vector<double> establishment;        // per dollar, on top of cost
  std::vector<double> final_harvest_acres;  // per acre cut
  std::vector<double> open_acres;           // per acre open at the end of the year
  std::vector<std::vector<double>> tons;    // [tons measure][year], per ton cut
  double ending_value = 0.0;                // per dollar standing at the plan's end
};

// A regime and what an acre of it is worth at the weights asked for.
struct WeighedRegime {
  Regime regime;
  double worth = 0.0;
};

// Finds regimes for a master program.
class PricingOracle {
 public:
  virtual ~PricingOracle() = default;
  virtual std::size_t stands() const = 0;
  // Whether best() takes so long for this stand that regimes which it told before are worth
  // being tried first.
  virtual bool is_slow(std::size_t) const { return false; }
  // The `most` regimes of the stand's lattice worth most, best first; of equal worth the
  // first in the lattice's own order. No regime of the lattice is worth more than the
  // first by more than tolerance::prune_slack of it.
  // Of several threads, each may ask for a stand of its own.
  // REQUIRES: most >= 1; vectors of plan.years + 1 numbers.
  virtual std::vector<WeighedRegime> best(std::size_t stand, const PlanWeights& weights,
                                          std::size_t most) = 0;
};

}  // namespace staddle
