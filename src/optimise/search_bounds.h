// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "optimise/next_cut_bounds.h"

namespace staddle {

// The tables by which a search leaves out cuts that lead to some set of final harvests,
// and what they say of the stand at hand.
class SearchBounds {
 public:
  explicit SearchBounds(BoundTable after_cut);
  void bound_next_cuts(const LatticeRules& rules, const SearchTables& tables,
                       const ExactLimits& limits);

  double land() const { return after_cut_.land(); }

  // For a stand followed over the ages at which it may get its last cut.
  void look_ahead(const SearchTables& tables, const Trajectory& stand, int from, int to);
  // After look_ahead(): no last cut at that age leads to more; infinite without tables for it.
  double of_age(int age_yr) const;

  // For the removals that were worked out of a stand at an age; returns the largest.
  double look_after(const SearchTables& tables, const Trajectory& stand, int age_yr,
                    double recovery_per_yr, const CutOptions& cuts);
  // After look_after().
  double of_removal(std::size_t option) const { return wide(of_removal_[option]); }

 private:
  BoundTable after_cut_;
  std::optional<NextCutBounds> next_cut_;
  LaneArray of_age_, of_removal_;
};

}  // namespace staddle
