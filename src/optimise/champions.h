// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <vector>

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

struct Champion {
  double value = 0;
  LatticeRegime regime;
};

// Whether a challenger takes the place of the holder, if any.
bool beats(double value, const LatticeRegime& regime, const std::optional<Champion>& holder);

// The best regime overall, and of each class that an answer shows.
class Champions {
 public:
  Champions(int max_thinnings, int last_age_yr);

  void offer(double value, const LatticeRegime& regime);

  const std::optional<Champion>& best() const { return best_; }
  const std::optional<Champion>& with_cuts(int cuts) const {
    return by_count_[static_cast<std::size_t>(cuts)];
  }
  // Best value among regimes of this first thinning, of this final harvest.
  const std::optional<Champion>& with_first_cut(int age_yr) const {
    return by_first_cut_[static_cast<std::size_t>(age_yr)];
  }
  const std::optional<Champion>& with_final(int age_yr) const {
    return by_final_[static_cast<std::size_t>(age_yr)];
  }

 private:
  std::optional<Champion> best_;
  std::vector<std::optional<Champion>> by_count_, by_first_cut_, by_final_;
};

}  // namespace staddle
