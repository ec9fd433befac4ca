// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/tract/solve.h"

#include <limits>

#include "tract/schedule.h"
#include "tract/tract_answer.h"

namespace staddle {

Result<TractSolution> solve(const TractProblem& problem, const TractOptions& options) {
  Faults faults = faults_of(problem);
  if (!faults.empty()) return faults;
  if (options.progress) {
    constexpr double unknown = std::numeric_limits<double>::infinity();
    options.progress({TractProgress::Stage::stands, 0, 0, -unknown, unknown});
  }
  const Result<std::vector<StandModel>> models = make_stand_models(problem, options);
  if (!models) return models.error();
  if (models->empty()) {
    TractSolution stopped;
    stopped.max_gap_asked = options.max_gap;
    stopped.message = "stopped before every stand was solved on its own";
    return stopped;
  }
  double unlimited = 0.0;
  for (const StandModel& model : *models) unlimited += model.acres * model.own_value;
  const Limits limits = limits_of(problem, unlimited);
  const Schedule schedule = make_schedule(*models, limits, problem.plan.whole_stands, options);
  TractSolution solution = tract_answer(problem, *models, limits, schedule, unlimited);
  solution.max_gap_asked = options.max_gap;
  return solution;
}

}  // namespace staddle
