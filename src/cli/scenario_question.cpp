// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/scenario_question.h"

#include "advise/scene.h"
#include "cli/input_file.h"
#include "cli/output_file.h"
#include "staddle/scenario/advise_problem.h"

namespace staddle::cli {

Result<ScenarioQuestion> load_question(const std::string& path) {
  Result<Scenario> scenario = load_scenario(path);
  if (!scenario) return scenario.error();
  Result<AdviseProblem> problem = make_advise_problem(*scenario);
  if (!problem) return problem.error();
  return ScenarioQuestion{std::move(scenario).value(), std::move(problem).value()};
}

Faults stated_regime_faults(const Scenario& scenario) {
  const Result<AdviseProblem> problem = make_advise_problem(scenario);
  if (!problem) return {};
  Faults faults;
  for (std::size_t i = 0; i < problem->stated.size(); ++i) {
    const Result<RegimeReport> report = simulate(problem->stand.stand_case, problem->stated[i]);
    if (report) continue;
    for (Fault fault : report.error()) {
      fault.place = "/regimes/" + std::to_string(i) + fault.place;
      faults.push_back(fault);
    }
  }
  return faults;
}

Faults no_plan_faults(const Scenario& scenario) {
  const Result<AdviseProblem> problem = make_advise_problem(scenario);
  if (!problem) return {};
  const std::optional<std::string> reason = why_no_plan(*problem);
  if (!reason) return {};
  return {{FaultCode::no_regime, "", "", *reason, ""}};
}

std::optional<Outcome> overwriting(const std::string& input, const OutputOptions& output) {
  if (!output.file || !same_file(input, *output.file)) return std::nullopt;
  return wrong_command_line("-o " + *output.file + " would overwrite the input");
}

}  // namespace staddle::cli
