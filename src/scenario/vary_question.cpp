// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/scenario/vary_question.h"

#include "staddle/base/contract.h"
#include "staddle/scenario/problems.h"

namespace staddle {

VaryProblem make_vary_problem(const Scenario& scenario) {
  require(scenario.vary.has_value(), "a scenario without a vary block varies nothing");
  ScenarioProblems problems = make_problems(scenario);
  const Planting planting = planting_of(scenario);
  const AfterHarvest after_harvest = scenario.after_harvest;
  VaryProblem problem{std::move(problems.stand),
                      std::move(problems.successor),
                      {},
                      scenario.regimes,
                      {},
                      std::nullopt,
                      std::nullopt,
                      planting.planted,
                      *scenario.vary};
  problem.tax = scenario.tax;
  problem.land_value = [after_harvest](std::optional<MoneyPerAcre> successor_lev) {
    return land_value_after(after_harvest, successor_lev.value_or(MoneyPerAcre()));
  };
  for (const ProductLimit& product : scenario.products) problem.products.push_back(product.name);
  if (const auto* equations = std::get_if<EquationSet>(&scenario.stand.source)) {
    problem.equations = *equations;
    problem.site_index = scenario.stand.site_index;
    problem.site_index_shift = planting.site_index_shift;
    problem.response = planting.response;
  }
  return problem;
}

}  // namespace staddle
