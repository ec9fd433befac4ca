// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/scenario/problems.h"

#include <algorithm>
#include <utility>

#include "staddle/base/contract.h"
#include "staddle/scenario/measured_stand.h"

namespace staddle {
namespace {

Assortment assortment_of(const Scenario& scenario) {
  if (const auto* equations = std::get_if<EquationSet>(&scenario.stand.source)) {
    return Assortment::from_equations(*equations, scenario.products);
  }
  return Assortment::from_table(std::get<YieldTable>(scenario.stand.source));
}

GrowthModel growth_of_bare_land(const Scenario& scenario, const Planting& planting) {
  const auto* equations = std::get_if<EquationSet>(&scenario.stand.source);
  if (!equations) return growth_model_of(scenario.stand);
  require(planting.planted.has_value(), "bare land on equations is planted with so many trees");
  return GrowthModel::from_equations(*equations,
                                     scenario.stand.site_index.value() + planting.site_index_shift,
                                     *planting.planted, planting.response);
}

StandProblem problem_on(const Scenario& scenario, GrowthModel growth) {
  return StandProblem{.stand_case = {.growth = std::move(growth),
                                     .assortment = assortment_of(scenario),
                                     .prices = scenario.prices,
                                     .costs = scenario.costs,
                                     .hazard = scenario.hazard,
                                     .standing = std::nullopt,
                                     .thinning_response = scenario.thinning_response,
                                     .cut_diameter_ratios = scenario.cut_diameter_ratios,
                                     .land_value = {}},
                      .lattice = scenario.lattice,
                      .acres = scenario.area};
}

void pay_for(const Planting& planting, Costs& costs) {
  costs.establishment = planting.establishment;
  costs.practices = planting.practices;
}

// Nothing earlier than the present is asked, and a stand older than the upper limit
// can only be cut now.
void begin_at_present(DecisionLattice& lattice, Age present) {
  lattice.thinning_from = std::max(lattice.thinning_from, present);
  const bool overmature = present > lattice.final_to;
  lattice.final_from = overmature ? present : std::max(lattice.final_from, present);
  if (overmature) lattice.final_to = present;
}

}  // namespace

StandProblem bare_land_problem(const Scenario& scenario, const Planting& planting) {
  StandProblem problem = problem_on(scenario, growth_of_bare_land(scenario, planting));
  pay_for(planting, problem.stand_case.costs);
  return problem;
}

ScenarioProblems make_problems(const Scenario& scenario) {
  require(!std::holds_alternative<std::vector<TabledRegime>>(scenario.stand.source),
          "tabled regimes are no stand problem: they are compared as they are");
  const Planting planting = planting_of(scenario);
  if (!scenario.is_standing()) return {bare_land_problem(scenario, planting), std::nullopt};

  // The stand keeps its own practices; what planting costs is told with its successor.
  StandProblem stand = problem_on(scenario, growth_model_of(scenario.stand));
  stand.stand_case.costs.establishment = planting.establishment;
  stand.stand_case.standing = scenario.stand.standing;
  if (scenario.after_harvest.kind == AfterHarvest::Kind::land_price) {
    stand.stand_case.land_value = scenario.after_harvest.land_price;
  }
  begin_at_present(stand.lattice, stand.stand_case.present());
  const bool planting_known =
      planting.planted || std::holds_alternative<YieldTable>(scenario.stand.source);
  if (!planting_known) return {std::move(stand), std::nullopt};
  return {std::move(stand), bare_land_problem(scenario, planting)};
}

MoneyPerAcre land_value_after(const AfterHarvest& after_harvest, MoneyPerAcre successor_lev) {
  switch (after_harvest.kind) {
    case AfterHarvest::Kind::replant:
      return successor_lev;
    case AfterHarvest::Kind::best:
      return std::max(successor_lev, MoneyPerAcre());
    case AfterHarvest::Kind::land_price:
      return after_harvest.land_price;
  }
  throw ContractViolation("land_value_after knows every kind of what follows the harvest");
}

}  // namespace staddle
