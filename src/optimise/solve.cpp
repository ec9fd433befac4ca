// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/optimise/solve.h"

#include <fmt/format.h>

#include <cmath>

#include "optimise/candidates.h"
#include "optimise/search_answer.h"
#include "regime/evaluate.h"

namespace staddle {
namespace {

PricedRegime priced(const Champion& champion, const LatticeRules& rules,
                    const CaseKernel& kernel) {
  const Regime regime = regime_of(champion.regime, rules);
  return {regime, evaluate(kernel, regime)};
}

NearBest near_best_of(const WindowAges& ages, double best_usd_ac) {
  NearBest near_best;
  near_best.tolerance = dollars_per_acre(near_best_tolerance_usd_ac(best_usd_ac));
  if (ages.first_low) near_best.first_thinning_low = age(*ages.first_low);
  if (ages.first_high) near_best.first_thinning_high = age(*ages.first_high);
  near_best.final_harvest_low = age(ages.final_low);
  near_best.final_harvest_high = age(ages.final_high);
  return near_best;
}

SearchAnswer search(const CaseKernel& kernel, const LatticeRules& rules,
                    const StandOptions& options) {
  // What a tax basis saves depends on all cuts before.
  const bool plain = options.method == StandOptions::Method::exhaustive || kernel.has_basis() ||
                     rules.final_from() > rules.final_to();
  if (plain) return answer_exhaustively(kernel, rules, options);
  if (!kernel.growth().from_table()) {
    return answer_by_vectors(kernel, rules, options, usual_effort(rules));
  }
  // A table's shares of products come from a search for an age: no closed form to vector.
  return kernel.hazard_active() ? answer_exhaustively(kernel, rules, options)
                                : answer_by_table_bounds(kernel, rules, options);
}

std::string why_none_is_left(const StandProblem& problem, const LatticeRules& rules) {
  const DecisionLattice& lattice = problem.lattice;
  const GrowthModel& growth = problem.stand_case.growth;
  if (!growth.kernel().from_table()) {
    return fmt::format("no final-harvest age is left: allowed are ages {} to {}",
                       rules.final_from(), rules.final_to());
  }
  const int first = growth.first_age().whole(), last = growth.last_age().whole();
  const bool ends_early = lattice.final_from.whole() > last;
  return fmt::format(
      "no final-harvest age is left: the yield table {} at age {}, and the window of final "
      "harvests {} at {} (/decisions/final_harvest_age_yr, by default {} to {})",
      ends_early ? "ends" : "begins", ends_early ? last : first, ends_early ? "begins" : "ends",
      ends_early ? lattice.final_from.whole() : lattice.final_to.whole(),
      DecisionLattice{}.final_from.whole(), DecisionLattice{}.final_to.whole());
}

}  // namespace

std::optional<std::string> no_final_harvest_age(const StandProblem& problem) {
  const CaseKernel kernel(problem.stand_case);
  const LatticeRules rules(problem, kernel);
  if (rules.final_from() <= rules.final_to()) return std::nullopt;
  return why_none_is_left(problem, rules);
}

StandSolution solve(const StandProblem& problem, const StandOptions& options) {
  const CaseKernel kernel(problem.stand_case);
  const LatticeRules rules(problem, kernel);
  const SearchAnswer answer = search(kernel, rules, options);
  StandSolution solution;
  solution.certificate.lattice_regimes = rules.count_regimes();
  solution.certificate.regimes_valued = answer.regimes_valued;
  if (!answer.finished) solution.certificate.gap = dollars_per_acre(HUGE_VAL);
  if (!answer.best) {
    solution.reason =
        answer.finished ? why_none_is_left(problem, rules)
                        : std::string("the search was stopped before it valued a regime");
    return solution;
  }
  solution.status =
      answer.finished ? StandSolution::Status::optimal : StandSolution::Status::stopped;
  solution.best = priced(*answer.best, rules, kernel);
  if (options.by_count) {
    for (const std::optional<Champion>& champion : answer.by_count) {
      solution.by_count.push_back(champion ? std::optional(priced(*champion, rules, kernel))
                                           : std::nullopt);
    }
  }
  if (answer.windows) solution.near_best = near_best_of(*answer.windows, answer.best->value);
  return solution;
}

}  // namespace staddle
