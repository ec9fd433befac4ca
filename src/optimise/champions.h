// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "staddle/base/best_of_ties.h"
#include "staddle/optimise/stand_solution.h"

namespace staddle {

// A regime of the lattice in the search's own terms; removals by index.
struct LatticeRegime {
  static constexpr std::size_t most_cuts = 6;
  int cuts = 0;
  std::array<int, most_cuts> age_yr{};
  std::array<int, most_cuts> removal{};
  int final_yr = 0;
};

// The tie rule: fewer entries, then smaller removals from left to right, then the
// earlier final harvest, then earlier ages from left to right.
bool comes_first(const LatticeRegime& a, const LatticeRegime& b);

using BestRegime = BestOfTies<LatticeRegime, comes_first>;

struct Champion {
  double value = 0;
  LatticeRegime regime;
};

std::optional<Champion> champion_of(const BestRegime& best);

// The best regime overall and by count of thinnings, and the highest values by the ages
// that an answer tells.
class Champions {
 public:
  Champions(int max_thinnings, int last_age_yr);

  void offer(double value, const LatticeRegime& regime);

  std::optional<Champion> best() const { return champion_of(best_); }
  std::optional<Champion> with_cuts(int cuts) const {
    return champion_of(by_count_[static_cast<std::size_t>(cuts)]);
  }
  // Of values; -infinity where there is none.
  double highest() const { return best_.highest(); }
  double highest_with_cuts(int cuts) const {
    return by_count_[static_cast<std::size_t>(cuts)].highest();
  }
  double highest_with_first_cut(int age_yr) const {
    return by_first_cut_[static_cast<std::size_t>(age_yr)];
  }
  double highest_with_final(int age_yr) const {
    return by_final_[static_cast<std::size_t>(age_yr)];
  }

 private:
  BestRegime best_;
  std::vector<BestRegime> by_count_;
  std::vector<double> by_first_cut_, by_final_;
};

}  // namespace staddle
