// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "staddle/base/result.h"
#include "staddle/optimise/stand_problem.h"
#include "staddle/scenario/planting.h"
#include "staddle/scenario/scenario.h"

namespace staddle {

// The stand problems of a scenario. `successor` is the bare-land problem of the stand
// that follows a standing one (same site, trees, decisions and hazard); absent on bare
// land, and where `planted` is unknown. `stand.stand_case.land_value` is left at zero
// where it depends on the successor's optimum: land_value_after below says what it is.
struct ScenarioProblems {
  StandProblem stand;
  std::optional<StandProblem> successor;
};

// Bare land and successor begin as planting_of() says.
// REQUIRES: a scenario that the reader accepted, whose source is not a list of tabled
// regimes.
ScenarioProblems make_problems(const Scenario& scenario);

// The bare land of a scenario, planted so. REQUIRES: as make_problems; planted trees known
// where growth is by equations.
StandProblem bare_land_problem(const Scenario& scenario, const Planting& planting);

// The value of an acre after the final harvest, given the successor's best land
// expectation value (LEV*; never floored silently): LEV*, max(LEV*, 0), or the price.
MoneyPerAcre land_value_after(const AfterHarvest& after_harvest, MoneyPerAcre successor_lev);

}  // namespace staddle
