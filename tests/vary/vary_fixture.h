// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/vary/vary.h"
#include "support/loblolly_equations.h"

namespace staddle::vary_tests {

// Bare land, coastal fit, site 70, 600 planted, 5 percent, 25/18/7, establishment 350,
// guards of the default; few choices, so that searches are quick.
inline VaryProblem bare_land() {
  const EquationSet set = support::coastal_loblolly();
  StandCase stand{GrowthModel::from_equations(set, feet(70), trees_per_acre(600)),
                  Assortment::from_equations(set, default_products()),
                  {{dollars_per_ton(25)}, {dollars_per_ton(18)}, {dollars_per_ton(7)}},
                  {DiscountRate::real(0.05)},
                  {},
                  std::nullopt};
  stand.costs.establishment = dollars_per_acre(350);
  stand.costs.annual_cost = dollars_per_acre(8);
  DecisionLattice lattice;
  lattice.removal_fractions = {0.25, 1.0 / 3.0};
  lattice.guards = default_guards();
  VaryProblem problem{{stand, lattice}, {}, {}, {}, {"sawtimber", "chip_n_saw", "pulpwood"},
                      set,              feet(70), trees_per_acre(600), {}};
  problem.question.rates = {stand.costs.rate};
  return problem;
}

// A dense stand of 15 years on the same site, replanted after its harvest.
inline VaryProblem standing_stand() {
  VaryProblem problem = bare_land();
  problem.successor = problem.stand;
  problem.stand.stand_case.standing = MeasuredStand{
      age(15), trees_per_acre(500), square_feet_per_acre(125), 0.39, std::nullopt, {}};
  problem.stand.lattice.thinning_from = age(15);
  problem.land_value = [](std::optional<MoneyPerAcre> lev) { return lev.value_or(MoneyPerAcre()); };
  return problem;
}

inline Hazard storms() {
  Peril wind;
  wind.name = "gale";
  wind.annual_probability = 0.02;
  wind.logistic = LogisticShare{0.3, feet(60), 0.4, 0.2, 3.0, true, 0.0};
  wind.salvage_share = 0.3;
  wind.cleanup = dollars_per_acre(100);
  Hazard hazard;
  hazard.zone = "own";
  hazard.perils = {wind};
  return hazard;
}

inline VaryProblem with_storms(VaryProblem problem) {
  problem.stand.stand_case.hazard = storms();
  if (problem.successor) problem.successor->stand_case.hazard = storms();
  return problem;
}

inline Parameter parameter(const VaryProblem& problem, const std::string& name) {
  for (const Parameter& one : parameters_of(problem.products)) {
    if (one.name == name) return one;
  }
  throw ContractViolation("no parameter " + name);
}

inline double usd_ac(MoneyPerAcre money) { return money.in(dollars_per_acre); }

}  // namespace staddle::vary_tests
