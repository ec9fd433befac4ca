// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include "optimise/last_harvest_kernels.h"
#include "optimise/search_state.h"

namespace staddle {

// What the final harvests of one stretch are worth, by age.
struct HarvestValues {
  std::span<const Lane> by_age;
  int from = 0;
  double highest = 0;

  int to() const { return from + static_cast<int>(by_age.size()) - 1; }
  double at(int age_yr) const { return wide(by_age[static_cast<std::size_t>(age_yr - from)]); }
};

// REQUIRES: final harvests in the plan, which `stand` has followed.
HarvestValues values_of(const Trajectory& stand, const StretchPlan& plan, double highest);

// Removals of one stand at one age after which it is not cut again: several are followed
// to their final harvests at a time.
class LastCuts {
 public:
  static constexpr std::size_t most = LastStands::most;

  LastCuts(const CaseKernel& kernel, const LatticeRules& rules, const SearchTables& tables,
           const StandOptions& options);

  bool empty() const { return options_of_cut_.empty(); }
  bool full() const { return options_of_cut_.size() == most; }
  // REQUIRES: not full; until clear(), the same state, stand and age.
  void add(const SearchState& state, const Trajectory& stand, int age_yr, const CutOptions& cuts,
           std::size_t option);
  void clear();

  // Values all; false where no final harvest is allowed any more.
  bool value();
  std::size_t count() const { return options_of_cut_.size(); }
  int option(std::size_t cut) const { return options_of_cut_[cut]; }
  // After value().
  HarvestValues values(std::size_t cut) const;

 private:
  bool storms() const { return !tables_.perils.empty(); }
  void add_stand(const SearchState& state, const Trajectory& stand, int age_yr,
                 const CutOptions& cuts, std::size_t option);

  const CaseKernel& kernel_;
  const LatticeRules& rules_;
  const SearchTables& tables_;
  const StandOptions& options_;
  std::vector<int> options_of_cut_;
  StretchPlan plan_;
  // Without storms.
  LastStands stands_;
  LastHarvests harvests_;
  std::vector<std::optional<HarvestRows>> rows_of_cut_age_;  // made when first asked for
  // With them: years depend on each other, and each stretch is followed.
  std::vector<SearchState> states_;
  std::vector<Trajectory> followed_;
  std::array<double, most> highest_{};
};

}  // namespace staddle
