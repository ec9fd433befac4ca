// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/chosen_regime.h"

#include <algorithm>

#include "advise/scene.h"

namespace staddle::cli {
namespace {

// What an acre is worth after the harvest is no part of what is told of the years before.
ChosenRegime tell(const AdviseProblem& problem, const StandCase& stand_case,
                  const StatedRegime& regime, const std::string& place, const std::string& file) {
  Result<RegimeReport> report = simulate(stand_case, regime);
  if (report) {
    ChosenRegime chosen{std::move(report).value(), std::nullopt, {}};
    if (problem.tax) {
      chosen.after_tax =
          told_after_tax(*chosen.regime, AfterTax(stand_case, *problem.tax, problem.stand.acres));
    }
    return chosen;
  }
  Faults faults = report.error();
  for (Fault& fault : faults) fault.place = place + fault.place;
  return {std::nullopt, std::nullopt, wrong_input(faults, file)};
}

ChosenRegime best_of(const AdviseProblem& problem, const std::string& name,
                     const std::string& file) {
  const Scene scene = solve_scene(problem, {});
  if (scene.solved()) {
    return tell(problem, scene.stand.stand_case, stated(name, scene.best().regime), "", file);
  }
  return {std::nullopt, std::nullopt,
          wrong_input({{FaultCode::no_regime, "", "", scene.solution.reason, ""}}, file)};
}

ChosenRegime uncut(const AdviseProblem& problem, const StandProblem& stand,
                   const std::string& file) {
  const Age last = std::min(std::max(stand.lattice.final_to, stand.stand_case.present()),
                            stand.stand_case.growth.last_age());
  return tell(problem, stand.stand_case, {"none", {}, last}, "", file);
}

ChosenRegime not_there(const std::string& name, const Words& names) {
  std::string known;
  for (const std::string& candidate : names) {
    known += (known.empty() ? "\"" : ", \"") + candidate + "\"";
  }
  const std::string nearest = nearest_name(name, names);
  return {std::nullopt, std::nullopt,
          wrong_command_line(
              "option --regime: no regime is called \"" + name + "\"; there are: " + known,
              nearest.empty() ? "" : "did you mean " + nearest + "?")};
}

ChosenRegime choose_table(const ScenarioQuestion& question, const std::string& name) {
  const std::string& file = question.scenario.file;
  if (name == "best") return best_of(question.problem, name, file);
  Words names{"best"};
  for (const TabledChoice& choice : question.problem.tabled) {
    if (name == "none" && choice.problem.stand_case.tabled_cuts.empty()) {
      return uncut(question.problem, choice.problem, file);
    }
    if (name == choice.name) {
      AdviseProblem alone = question.problem;
      alone.tabled = {choice};
      return best_of(alone, name, file);
    }
    names.push_back(choice.name);
  }
  return not_there(name, names);
}

}  // namespace

ChosenRegime choose_regime(const ScenarioQuestion& question, const std::string& name) {
  const AdviseProblem& problem = question.problem;
  const std::string& file = question.scenario.file;
  if (!problem.tabled.empty()) return choose_table(question, name);
  if (name == "best") return best_of(problem, name, file);
  if (name == "none") return uncut(problem, problem.stand, file);
  Words names{"best", "none"};
  for (std::size_t i = 0; i < problem.stated.size(); ++i) {
    if (problem.stated[i].name == name) {
      return tell(problem, problem.stand.stand_case, problem.stated[i],
                  "/regimes/" + std::to_string(i), file);
    }
    names.push_back(problem.stated[i].name);
  }
  return not_there(name, names);
}

}  // namespace staddle::cli
