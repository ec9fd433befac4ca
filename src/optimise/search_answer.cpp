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

namespace {

SearchAnswer answer_of(const SearchOutcome& outcome, const LatticeRules& rules,
                       const StandOptions& options) {
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
  answer.windows = outermost_ages(
      rules, *answer.best, [&](int at) { return champions.highest_with_final(at) >= floor; },
      [&](int at) { return champions.highest_with_first_cut(at) >= floor; });
  return answer;
}

}  // namespace

SearchAnswer answer_exhaustively(const CaseKernel& kernel, const LatticeRules& rules,
                                 const StandOptions& options) {
  return answer_of(search_exhaustively(kernel, rules, options), rules, options);
}

SearchAnswer answer_by_table_bounds(const CaseKernel& kernel, const LatticeRules& rules,
                                    const StandOptions& options) {
  return answer_of(search_by_table_bounds(kernel, rules, options), rules, options);
}

SearchEffort usual_effort(const LatticeRules& rules) {
  // A lattice as large as this will need bounds, so they are made almost at once.
  constexpr double surely_large = 1e6;
  if (rules.count_regimes() > surely_large) return {.patience = 250, .bound_next_cuts = true};
  return {};
}

#ifndef STADDLE_HAVE_HIGHWAY

// Without vectors every regime is valued one at a time: slower, and the same answer.
SearchAnswer answer_by_vectors(const CaseKernel& kernel, const LatticeRules& rules,
                               const StandOptions& options, const SearchEffort&) {
  return answer_exhaustively(kernel, rules, options);
}

#else

SearchAnswer answer_by_vectors(const CaseKernel& kernel, const LatticeRules& rules,
                               const StandOptions& options, const SearchEffort& effort) {
  const SearchTables tables(kernel, rules);
  VectorSearch search(kernel, rules, tables, options, effort);
  search.run();
  SearchAnswer answer;
  answer.best = search.candidates().best();
  for (int cuts = 0; cuts <= rules.max_thinnings(); ++cuts) {
    answer.by_count.push_back(search.candidates().champion(cuts));
  }
  if (options.windows && answer.best) {
    const double floor = answer.best->value - near_best_tolerance_usd_ac(answer.best->value);
    answer.windows = search.near_ages(*answer.best, floor);
  }
  answer.regimes_valued = search.regimes_valued();
  answer.finished = search.finished();
  return answer;
}

#endif

}  // namespace staddle
