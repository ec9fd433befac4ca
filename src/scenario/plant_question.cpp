// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/scenario/plant_question.h"

#include "staddle/base/contract.h"
#include "staddle/scenario/problems.h"

namespace staddle {

PlantProblem make_plant_problem(const Scenario& scenario) {
  require(scenario.establishment.has_value(),
          "a scenario without an establishment block has no ways to compare");
  PlantProblem problem;
  problem.alternatives = scenario.establishment->alternatives;
  problem.stand = [scenario](const EstablishmentAlternative& alternative) {
    return bare_land_problem(scenario, planting_by(scenario, &alternative));
  };
  if (const auto* equations = std::get_if<EquationSet>(&scenario.stand.source)) {
    problem.equations = *equations;
    problem.site_index = scenario.stand.site_index;
  }
  const Planting stated = planting_by(scenario, nullptr);
  if (stated.planted || !problem.equations) {
    problem.as_stated = bare_land_problem(scenario, stated);
  }
  problem.site = scenario.site;
  problem.regeneration_delay_yr = scenario.costs.regeneration_delay_yr;
  problem.tax = scenario.tax;
  return problem;
}

}  // namespace staddle
