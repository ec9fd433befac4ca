// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/champions.h"

#include <cmath>

namespace staddle {

bool comes_first(const LatticeRegime& a, const LatticeRegime& b) {
  if (a.cuts != b.cuts) return a.cuts < b.cuts;
  const auto cuts = static_cast<std::size_t>(a.cuts);
  for (std::size_t i = 0; i < cuts; ++i) {
    if (a.removal[i] != b.removal[i]) return a.removal[i] < b.removal[i];
  }
  if (a.final_yr != b.final_yr) return a.final_yr < b.final_yr;
  for (std::size_t i = 0; i < cuts; ++i) {
    if (a.age_yr[i] != b.age_yr[i]) return a.age_yr[i] < b.age_yr[i];
  }
  return false;
}

std::optional<Champion> champion_of(const BestRegime& best) {
  const std::optional<BestRegime::Held> held = best.best();
  return held ? std::optional(Champion{held->value, held->choice}) : std::nullopt;
}

Champions::Champions(int max_thinnings, int last_age_yr)
    : by_count_(static_cast<std::size_t>(max_thinnings) + 1),
      by_first_cut_(static_cast<std::size_t>(last_age_yr) + 1, -HUGE_VAL),
      by_final_(static_cast<std::size_t>(last_age_yr) + 1, -HUGE_VAL) {}

void Champions::offer(double value, const LatticeRegime& regime) {
  const auto raise = [value](double& highest) {
    if (value > highest) highest = value;
  };
  best_.offer(value, regime);
  by_count_[static_cast<std::size_t>(regime.cuts)].offer(value, regime);
  if (regime.cuts > 0) raise(by_first_cut_[static_cast<std::size_t>(regime.age_yr[0])]);
  raise(by_final_[static_cast<std::size_t>(regime.final_yr)]);
}

}  // namespace staddle
