// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/scenario/vary_question.h"

#include "staddle/base/contract.h"
#include "staddle/scenario/problems.h"

namespace staddle {

VaryProblem make_vary_problem(const Scenario& scenario) {
  require(scenario.vary.has_value(), "a scenario without a vary block varies nothing");
  ScenarioProblems problems = make_problems(scenario);
  const AfterHarvest after_harvest = scenario.after_harvest;
  VaryProblem problem{std::move(problems.stand),
                      std::move(problems.successor),
                      {},
                      scenario.regimes,
                      {},
                      std::nullopt,
                      std::nullopt,
                      scenario.stand.planted,
                      *scenario.vary};
  problem.land_value = [after_harvest](std::optional<MoneyPerAcre> successor_lev) {
    return land_value_after(after_harvest, successor_lev.value_or(MoneyPerAcre()));
  };
  for (const ProductLimit& product : scenario.products) problem.products.push_back(product.name);
  if (const auto* equations = std::get_if<EquationSet>(&scenario.stand.source)) {
    problem.equations = *equations;
    problem.site_index = scenario.stand.site_index;
  }
  return problem;
}

}  // namespace staddle
