// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "staddle/advise/advise.h"

namespace staddle {

// A stand and what follows it, solved together: where the stand stands already, the
// successor's optimum comes first and gives the land its value.
struct Scene {
  StandProblem stand;                     // land_value as the successor's optimum says
  std::optional<StandSolution> successor;
  StandSolution solution;

  bool solved() const { return solution.status != StandSolution::Status::no_regime; }
  const PricedRegime& best() const { return solution.best; }
  double best_usd_ac() const { return best().value.objective.in(dollars_per_acre); }
  std::optional<MoneyPerAcre> successor_lev() const;
};

// The problem with one thing changed, in the stand and in its successor alike.
template <class Change>
AdviseProblem changed(AdviseProblem problem, Change change) {
  change(problem.stand);
  if (problem.successor) change(*problem.successor);
  return problem;
}

// Prepares the land value, without solving the stand itself. Where the successor has no
// regime, `reason` is filled.
Scene prepare(const AdviseProblem& problem, const StandOptions& options);
Scene solve_scene(const AdviseProblem& problem, const StandOptions& options);

Plan plan_of(const Scene& scene, const PricedRegime& priced);

// Whether two plans for the same present are the same advice (advice.h, Survival).
bool same_advice(const Regime& a, const Regime& b, Age present);

}  // namespace staddle
