// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/search_answer.h"

#include <algorithm>
#include <cmath>

#include "optimise/exhaustive.h"
#include "optimise/vector_search.h"

namespace staddle {

double near_best_tolerance_usd_ac(double best_usd_ac) {
  constexpr double least_usd_ac = 5.0;
  constexpr double share = 0.02;
  return std::max(least_usd_ac, share * std::fabs(best_usd_ac));
}

SearchAnswer answer_exhaustively(const CaseKernel& kernel, const LatticeRules& rules,
                                 const StandOptions& options) {
  const SearchOutcome outcome = search_exhaustively(kernel, rules, options);
  const Champions& champions = outcome.champions;
  SearchAnswer answer;
  answer.best = champions.best();
  answer.regimes_valued = outcome.regimes_valued;
  answer.finished = outcome.finished;
  for (int cuts = 0; cuts <= rules.max_thinnings(); ++cuts) {
    answer.by_count.push_back(champions.with_cuts(cuts));
  }
  if (!options.windows || !answer.best) return answer;
  const double floor = answer.best->value - near_best_tolerance_usd_ac(answer.best->value);
  const auto is_near = [floor](const std::optional<Champion>& champion) {
    return champion && champion->value >= floor;
  };
  answer.windows = outermost_ages(
      rules, *answer.best, [&](int at) { return is_near(champions.with_final(at)); },
      [&](int at) { return is_near(champions.with_first_cut(at)); });
  return answer;
}

namespace {

// Absent where an approximate value lies too close to the floor to tell.
std::optional<WindowAges> windows_of(const VectorSearch& search, const LatticeRules& rules,
                                     const SearchTables& tables, const Champion& best) {
  const double floor = best.value - near_best_tolerance_usd_ac(best.value);
  const double slack = tables.slack(best.value);
  bool in_doubt = false;
  const auto is_near = [&](double highest) {
    if (std::fabs(highest - floor) <= slack) in_doubt = true;
    return highest >= floor;
  };
  const WindowAges ages = outermost_ages(
      rules, best, [&](int at) { return is_near(search.highest_with_final(at)); },
      [&](int at) { return is_near(search.highest_with_first_cut(at)); });
  if (in_doubt) return std::nullopt;
  return ages;
}

}  // namespace

SearchAnswer answer_by_vectors(const CaseKernel& kernel, const LatticeRules& rules,
                               const StandOptions& options) {
  const SearchTables tables(kernel, rules);
  VectorSearch search(kernel, rules, tables, options);
  search.run();
  SearchAnswer answer;
  answer.best = search.candidates().best();
  answer.regimes_valued = search.regimes_valued();
  answer.finished = search.finished();
  for (int cuts = 0; cuts <= rules.max_thinnings(); ++cuts) {
    answer.by_count.push_back(search.candidates().champion(cuts));
  }
  if (!options.windows || !answer.best) return answer;
  answer.windows = windows_of(search, rules, tables, *answer.best);
  if (!answer.windows) return answer_exhaustively(kernel, rules, options);
  return answer;
}

}  // namespace staddle
