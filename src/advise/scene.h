// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "staddle/advise/advise.h"
#include "staddle/regime/after_tax.h"

namespace staddle {

// The tax that a scene is told after, and the land that it is then counted with.
struct SceneTax {
  TaxRules rules;
  MoneyPerAcre land_value;                     // standing
  std::optional<MoneyPerAcre> successor_lev;   // standing, of the plan found before tax
};

// A stand and what follows it, solved together: where the stand stands already, the
// successor's optimum comes first and gives the land its value.
struct Scene {
  StandProblem stand;                     // land_value as the successor's optimum says
  std::optional<StandSolution> successor;
  StandSolution solution;
  std::size_t table = 0;  // of tabled choices: which one `stand` is
  std::optional<SceneTax> tax = std::nullopt;

  bool solved() const { return solution.status != StandSolution::Status::no_regime; }
  const PricedRegime& best() const { return solution.best; }
  double best_usd_ac() const { return best().value.objective.in(dollars_per_acre); }
  std::optional<MoneyPerAcre> successor_lev() const;
};

// The problem with one thing changed, in the stand, its successor and its tables alike.
template <class Change>
AdviseProblem changed(AdviseProblem problem, Change change) {
  change(problem.stand);
  if (problem.successor) change(*problem.successor);
  for (TabledChoice& choice : problem.tabled) change(choice.problem);
  return problem;
}

// Prepares the land value, without solving the stand itself. Where the successor has no
// regime, `reason` is filled.
Scene prepare(const AdviseProblem& problem, const StandOptions& options);
// Why no plan of the problem can satisfy the limits, asked before anything is solved;
// nothing where one can.
std::optional<std::string> why_no_plan(const AdviseProblem& problem);

Scene solve_scene(const AdviseProblem& problem, const StandOptions& options);

// The plan of one scene under the circumstances of another: on its own table, where the
// plans come from tables.
const StandCase& case_for_plan_of(const Scene& plan, const AdviseProblem& problem,
                                  const Scene& circumstances);

// `stand_case`: the one that priced it, where it is not the scene's own.
Plan plan_of(const Scene& scene, const PricedRegime& priced, const StandCase& stand_case);
Plan plan_of(const Scene& scene, const PricedRegime& priced);

// A case of the scene after tax. REQUIRES: scene.tax.
AfterTax after_tax(const Scene& scene, const StandCase& stand_case);

// Whether two plans for the same present are the same advice (advice.h, Survival).
bool same_advice(const Regime& a, const Regime& b, Age present);

}  // namespace staddle
