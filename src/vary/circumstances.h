// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/vary/vary_problem.h"

namespace staddle {

// Everything that may differ from one cell to the next, in absolute values.
struct Circumstances {
  DiscountRate rate;
  PriceList prices;
  MoneyPerAcre establishment, annual_cost;
  // Absent: as the problem has it.
  std::optional<Height> site_index;
  std::optional<TreeDensity> planted;
  std::optional<double> storm_odds_ratio;
  double growth_multiplier = 1.0;

  // Whether stands grow and fall to storms alike, whatever the money.
  bool same_growth(const Circumstances& other) const;
};

Circumstances todays(const VaryProblem& problem);

// Sets one parameter; relative changes are of the problem's own figure.
void set_parameter(const VaryProblem& problem, const Parameter& parameter, double value,
                   Circumstances& circumstances);
void set_prices(const std::vector<Price>& stumpage, Circumstances& circumstances);

// The value of a parameter as things are: 0 for a relative one; absent where there is no
// single one (factors that differ by product, odds ratios that differ by peril).
std::optional<double> todays_value(const VaryProblem& problem, const Parameter& parameter);

// The problem under the circumstances. The land value is not set yet.
struct World {
  StandProblem stand;
  std::optional<StandProblem> successor;
};
World world_of(const VaryProblem& problem, const Circumstances& circumstances);

}  // namespace staddle
