// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "optimise/lattice_rules.h"
#include "staddle/base/tolerance.h"
#include "staddle/optimise/solve.h"

namespace staddle {

std::vector<BrokenLimit> broken_limits(const StandProblem& problem, const RegimeReport& regime) {
  const CaseKernel kernel(problem.stand_case);
  const LatticeRules rules(problem, kernel);
  const DecisionLattice& lattice = problem.lattice;
  std::vector<BrokenLimit> broken;
  const int gap = lattice.years_between_entries;
  std::optional<int> previous;
  if (problem.stand_case.standing && problem.stand_case.standing->last_thinning) {
    previous = problem.stand_case.standing->last_thinning->at.whole();
  }
  const auto check_window = [&](const char* limit, int at, int low, int high) {
    if (at < low) broken.push_back({limit, static_cast<double>(at), static_cast<double>(low)});
    if (at > high) broken.push_back({limit, static_cast<double>(at), static_cast<double>(high)});
  };
  int entry = 0;
  for (const ThinningRecord& thinning : regime.thinnings) {
    if (thinning.cuts_nothing) {
      broken.push_back({residual_not_reached, 0.0, 0.0});
      continue;
    }
    const int at = thinning.at.whole();
    check_window("thinning_age_yr", at, lattice.thinning_from.whole(),
                 lattice.thinning_to.whole());
    if (previous && at - *previous < gap) {
      broken.push_back({"years_between_entries", static_cast<double>(at - *previous),
                        static_cast<double>(gap)});
    }
    previous = at;
    rules.note_broken(thinning, entry++, broken);
  }
  const int final_yr = regime.final_harvest_age.whole();
  check_window("final_harvest_age_yr", final_yr, rules.final_from(), rules.final_to());
  if (entry > 0 && final_yr - *previous < gap) {
    broken.push_back({"years_between_entries", static_cast<double>(final_yr - *previous),
                      static_cast<double>(gap)});
  }
  return broken;
}

int first_cuts_shut_by_one_ton_rule(const StandProblem& problem) {
  const CaseKernel kernel(problem.stand_case);
  const LatticeRules rules(problem, kernel);
  if (rules.max_thinnings() == 0) return 0;
  int shut = 0;
  StandPoint point = kernel.start();
  Measured measured;
  Cut cut;
  const int from = rules.next_cut_from(point);
  for (;; kernel.advance(point, measured)) {
    if (point.age_yr > rules.cut_to()) return shut;
    if (point.age_yr < from) continue;
    kernel.measure_tons(point, measured);
    if (!rules.stand_may_be_cut(measured)) continue;
    for (std::size_t i = 0; i < rules.removals_allowed(point.age_yr); ++i) {
      if (!rules.leaves_trees(rules.removals()[i], point.entries)) continue;
      kernel.work_out_cut(point, measured, rules.removals()[i], cut);
      if (rules.keeps_all_but_one_ton_rule(cut) && rules.breaks_one_ton_rule(cut)) ++shut;
    }
  }
}

}  // namespace staddle
