// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "optimise/champions.h"
#include "optimise/lattice_rules.h"

namespace staddle {

// Ages within which the value stays near the best; the first thinning's are absent where
// the best has none.
struct WindowAges {
  std::optional<int> first_low, first_high;
  int final_low = 0, final_high = 0;
};

// What a search of the lattice found, whatever its method.
struct SearchAnswer {
  std::optional<Champion> best;
  std::vector<std::optional<Champion>> by_count;
  std::optional<WindowAges> windows;  // as asked; absent without a best
  std::uint64_t regimes_valued = 0;
  bool finished = true;               // false: the stop token ended it
};

// What counts as being as good as the best: max($5, 2 percent of |best|) per acre.
double near_best_tolerance_usd_ac(double best_usd_ac);

// The outermost ages of each kind that `final_is_near` and `first_is_near` call near.
template <class FinalIsNear, class FirstIsNear>
WindowAges outermost_ages(const LatticeRules& rules, const Champion& best,
                          const FinalIsNear& final_is_near, const FirstIsNear& first_is_near) {
  WindowAges ages;
  bool seen = false;
  for (int at = rules.final_from(); at <= rules.final_to(); ++at) {
    if (!final_is_near(at)) continue;
    if (!seen) ages.final_low = at;
    ages.final_high = at;
    seen = true;
  }
  if (best.regime.cuts == 0) return ages;
  for (int at = rules.cut_from(); at <= rules.cut_to(); ++at) {
    if (!first_is_near(at)) continue;
    if (!ages.first_low) ages.first_low = at;
    ages.first_high = at;
  }
  return ages;
}

// Every regime valued by the plain evaluator: the baseline and the twin.
SearchAnswer answer_exhaustively(const CaseKernel& kernel, const LatticeRules& rules,
                                 const StandOptions& options);
// The same, with less to value. REQUIRES: as TableBounds.
SearchAnswer answer_by_table_bounds(const CaseKernel& kernel, const LatticeRules& rules,
                                    const StandOptions& options);
// When a search by vectors makes tables of bounds, and which: they cost the time of some
// two thousand trajectories, and save most of the others.
struct SearchEffort {
  std::uint64_t patience = 2000;  // trajectories followed before
  bool bound_next_cuts = false;   // also bounds on cuts not yet made
};
SearchEffort usual_effort(const LatticeRules& rules);

// Searched by vector arithmetic and proved by bounds. REQUIRES: growth from equations.
SearchAnswer answer_by_vectors(const CaseKernel& kernel, const LatticeRules& rules,
                               const StandOptions& options, const SearchEffort& effort);

}  // namespace staddle
