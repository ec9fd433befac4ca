// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/optimise/solve.h"

#include <algorithm>
#include <cmath>

#include "optimise/exhaustive.h"
#include "optimise/lattice_rules.h"
#include "regime/evaluate.h"

namespace staddle {
namespace {

// What counts as being as good as the best: max($5, 2 percent of |best|) per acre.
MoneyPerAcre near_best_tolerance(double best_usd_ac) {
  constexpr double least_usd_ac = 5.0;
  constexpr double share = 0.02;
  return dollars_per_acre(std::max(least_usd_ac, share * std::fabs(best_usd_ac)));
}

Regime regime_of(const LatticeRegime& found, const LatticeRules& rules) {
  Regime regime;
  for (std::size_t i = 0; i < static_cast<std::size_t>(found.cuts); ++i) {
    regime.thinnings.push_back(
        {age(found.age_yr[i]), rules.removals()[static_cast<std::size_t>(found.removal[i])]});
  }
  regime.final_harvest = age(found.final_yr);
  return regime;
}

PricedRegime priced(const Champion& champion, const LatticeRules& rules,
                    const CaseKernel& kernel) {
  const Regime regime = regime_of(champion.regime, rules);
  return {regime, evaluate(kernel, regime)};
}

NearBest windows(const Champions& champions, const LatticeRules& rules) {
  const double best = champions.best()->value;
  NearBest near_best;
  near_best.tolerance = near_best_tolerance(best);
  const double floor = best - near_best.tolerance.in(dollars_per_acre);
  bool seen = false;
  for (int at = rules.final_from(); at <= rules.final_to(); ++at) {
    if (!champions.with_final(at) || champions.with_final(at)->value < floor) continue;
    if (!seen) near_best.final_harvest_low = age(at);
    near_best.final_harvest_high = age(at);
    seen = true;
  }
  if (champions.best()->regime.cuts == 0) return near_best;
  for (int at = rules.cut_from(); at <= rules.cut_to(); ++at) {
    if (!champions.with_first_cut(at) || champions.with_first_cut(at)->value < floor) continue;
    if (!near_best.first_thinning_low) near_best.first_thinning_low = age(at);
    near_best.first_thinning_high = age(at);
  }
  return near_best;
}

}  // namespace

StandSolution solve(const StandProblem& problem, const StandOptions& options) {
  const CaseKernel kernel(problem.stand_case);
  const LatticeRules rules(problem, kernel);
  const SearchOutcome outcome = search_exhaustively(kernel, rules, options);
  StandSolution solution;
  solution.certificate.lattice_regimes = rules.count_regimes();
  solution.certificate.regimes_valued = outcome.regimes_valued;
  if (!outcome.finished) solution.certificate.gap = dollars_per_acre(HUGE_VAL);
  if (!outcome.champions.best()) {
    if (!outcome.finished) {
      solution.reason = "the search was stopped before it valued a regime";
      return solution;
    }
    solution.reason = "no final-harvest age is left: allowed are ages " +
                      std::to_string(rules.final_from()) + " to " +
                      std::to_string(rules.final_to());
    return solution;
  }
  solution.status =
      outcome.finished ? StandSolution::Status::optimal : StandSolution::Status::stopped;
  solution.best = priced(*outcome.champions.best(), rules, kernel);
  if (options.by_count) {
    for (int cuts = 0; cuts <= rules.max_thinnings(); ++cuts) {
      const auto& champion = outcome.champions.with_cuts(cuts);
      solution.by_count.push_back(champion ? std::optional(priced(*champion, rules, kernel))
                                           : std::nullopt);
    }
  }
  if (options.windows) solution.near_best = windows(outcome.champions, rules);
  return solution;
}

}  // namespace staddle
