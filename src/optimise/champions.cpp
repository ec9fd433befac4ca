// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/champions.h"

#include "staddle/base/tolerance.h"

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

bool beats(double value, const LatticeRegime& regime, const std::optional<Champion>& holder) {
  if (!holder) return true;
  if (tolerance::values_tie(value, holder->value)) return comes_first(regime, holder->regime);
  return value > holder->value;
}

Champions::Champions(int max_thinnings, int last_age_yr)
    : by_count_(static_cast<std::size_t>(max_thinnings) + 1),
      by_first_cut_(static_cast<std::size_t>(last_age_yr) + 1),
      by_final_(static_cast<std::size_t>(last_age_yr) + 1) {}

void Champions::offer(double value, const LatticeRegime& regime) {
  const auto challenge = [&](std::optional<Champion>& holder) {
    if (beats(value, regime, holder)) holder = Champion{value, regime};
  };
  challenge(best_);
  challenge(by_count_[static_cast<std::size_t>(regime.cuts)]);
  if (regime.cuts > 0) challenge(by_first_cut_[static_cast<std::size_t>(regime.age_yr[0])]);
  challenge(by_final_[static_cast<std::size_t>(regime.final_yr)]);
}

}  // namespace staddle
