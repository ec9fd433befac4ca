// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/scenario/problems.h"

#include <algorithm>

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

StandProblem bare_land_problem(const Scenario& scenario) {
  return StandProblem{.stand_case = {.growth = growth_model_of(scenario.stand),
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

// Nothing earlier than the present is asked, and a stand older than the upper limit
// can only be cut now.
void begin_at_present(DecisionLattice& lattice, Age present) {
  lattice.thinning_from = std::max(lattice.thinning_from, present);
  const bool overmature = present > lattice.final_to;
  lattice.final_from = overmature ? present : std::max(lattice.final_from, present);
  if (overmature) lattice.final_to = present;
}

}  // namespace

ScenarioProblems make_problems(const Scenario& scenario) {
  require(!std::holds_alternative<std::vector<TabledRegime>>(scenario.stand.source),
          "tabled regimes are no stand problem: they are compared as they are");
  StandProblem bare_land = bare_land_problem(scenario);
  if (!scenario.is_standing()) return {std::move(bare_land), std::nullopt};

  StandProblem stand = bare_land;
  stand.stand_case.standing = scenario.stand.standing;
  if (scenario.after_harvest.kind == AfterHarvest::Kind::land_price) {
    stand.stand_case.land_value = scenario.after_harvest.land_price;
  }
  begin_at_present(stand.lattice, stand.stand_case.present());
  const bool planting_known =
      scenario.stand.planted || std::holds_alternative<YieldTable>(scenario.stand.source);
  if (!planting_known) return {std::move(stand), std::nullopt};
  return {std::move(stand), std::move(bare_land)};
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
