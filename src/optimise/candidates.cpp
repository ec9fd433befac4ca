// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/candidates.h"

#include <limits>

#include "regime/evaluate.h"

namespace staddle {

Regime regime_of(const LatticeRegime& found, const LatticeRules& rules) {
  Regime regime;
  for (std::size_t i = 0; i < static_cast<std::size_t>(found.cuts); ++i) {
    regime.thinnings.push_back(
        {age(found.age_yr[i]), rules.removals()[static_cast<std::size_t>(found.removal[i])]});
  }
  regime.final_harvest = age(found.final_yr);
  return regime;
}

Candidates::Candidates(const CaseKernel& kernel, const LatticeRules& rules,
                       const SearchTables& tables)
    : kernel_(kernel),
      rules_(rules),
      tables_(tables),
      highest_(static_cast<std::size_t>(rules.max_thinnings()) + 1,
               -std::numeric_limits<double>::infinity()),
      floor_(highest_),
      champions_(rules.max_thinnings(), kernel.last_age_yr()) {
  waiting_.reserve(most_waiting);
}

void Candidates::offer(double value, const LatticeRegime& regime) {
  const auto cuts = static_cast<std::size_t>(regime.cuts);
  if (!(value > floor_[cuts])) return;
  if (waiting_.size() == most_waiting) {
    drop_beaten();
    if (waiting_.size() > most_waiting / 2) settle();
  }
  if (value > highest_[cuts]) {
    highest_[cuts] = value;
    floor_[cuts] = value - tables_.slack(value);
  }
  waiting_.push_back({value, regime});
}

void Candidates::drop_beaten() {
  std::erase_if(waiting_, [this](const Candidate& candidate) {
    return !(candidate.value > floor_[static_cast<std::size_t>(candidate.regime.cuts)]);
  });
}

void Candidates::settle() {
  drop_beaten();
  for (const Candidate& candidate : waiting_) {
    const RegimeValue exact = evaluate(kernel_, regime_of(candidate.regime, rules_));
    champions_.offer(exact.objective.in(dollars_per_acre), candidate.regime);
  }
  waiting_.clear();
}

}  // namespace staddle
