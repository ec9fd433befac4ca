// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "signs/stand_by_hand.h"
#include "staddle/advise/advise.h"
#include "staddle/scenario/advise_problem.h"

namespace staddle::by_hand {

// Forty acres of the table of stand_by_hand.h: bare land, or a stand of this age.
inline Scenario tract(std::optional<int> age_yr = std::nullopt) {
  Scenario scenario;
  scenario.title = "Forty acres";
  scenario.area = acres(40);
  scenario.stand.source = yield_table();
  if (age_yr) {
    scenario.stand.standing = {age(*age_yr), trees_per_acre(600.0 - 8.0 * *age_yr),
                               square_feet_per_acre(4.5 * *age_yr), std::nullopt, std::nullopt, {}};
  }
  scenario.products = {{"sawtimber", {}, {}, 1.0}, {"pulpwood", {}, {}, 1.0}};
  const StandCase stand = stand_case();
  scenario.prices = stand.prices;
  scenario.costs = stand.costs;
  scenario.costs.annual_cost = dollars_per_acre(8);
  scenario.lattice.removal_fractions = {0.25, 1.0 / 3.0, 0.5};
  scenario.lattice.thinning_from = age(12);
  scenario.lattice.thinning_to = age(30);
  scenario.lattice.final_from = age(20);
  scenario.lattice.final_to = age(40);
  scenario.lattice.guards = default_guards();
  scenario.cut_diameter_ratios = {0.95};
  scenario.ready_limits = default_ready_limits();
  return scenario;
}

inline Advice advice_for(const Scenario& scenario) {
  return advise(make_advise_problem(scenario).value()).value();
}

}  // namespace staddle::by_hand
