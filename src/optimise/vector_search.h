// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "optimise/candidates.h"
#include "optimise/exact_limits.h"
#include "optimise/local_search.h"
#include "optimise/search_answer.h"
#include "optimise/search_bounds.h"
#include "optimise/search_state.h"

namespace staddle {

// Values every regime of the lattice by vector arithmetic, depth first over cuts: each
// state after a cut gets one trajectory over ages that serves all final harvests and all
// later cuts. Only regimes within the slack of the best of their count are settled by the
// plain evaluator. Growth from equations only.
class VectorSearch {
 public:
  VectorSearch(const CaseKernel& kernel, const LatticeRules& rules, const SearchTables& tables,
               const StandOptions& options, const SearchEffort& effort);

  void run();
  // The ages near the best, floor and above. Approximate values of run() tell most of it;
  // where they do not, the lattice is searched again for regimes outside what is known.
  WindowAges near_ages(const Champion& best, double floor);

  bool finished() const { return finished_; }
  std::uint64_t regimes_valued() const { return valued_; }
  Candidates& candidates() { return candidates_; }

 private:
  void follow(const SearchState& state);
  void note_values(const HarvestValues& values);
  bool widens(int final_yr) const;
  void widen(int final_yr);
  void widen_by_values(const HarvestValues& values);
  bool all_is_told() const;
  bool is_near(const std::vector<double>& highest, int at, double floor) const;
  void try_cuts(const SearchState& state, int age_yr);
  void value_last_cuts(std::size_t entry);
  void make_bounds();
  void guess_windows();
  SearchBounds bounds_outside(const WindowAges& ages) const;
  bool first_is_outside(const WindowAges& ages, int first) const;
  // What a regime must be able to reach, and the bounds that tell whether it is.
  struct Hurdle {
    SearchBounds* bounds = nullptr;
    double least = 0;
  };
  // A cut is left out that is below every hurdle. Where `first_yr` is the first thinning.
  void set_hurdles(int first_yr);
  bool age_is_pruned(const SearchState& state, int age_yr);
  // False where all of them are pruned.
  bool bound_cuts(const Trajectory& stand, int age_yr, const CutOptions& cuts);
  bool is_pruned(std::size_t option) const;
  double land_worth() const;
  double highest_of_all() const;
  double threshold(double objective) const;

  const CaseKernel& kernel_;
  const LatticeRules& rules_;
  const SearchTables& tables_;
  const StandOptions& options_;
  const VectorKernels& vectors_;
  const CutKernels& cut_kernels_;
  const ExactLimits limits_;
  std::vector<Trajectory> stands_;  // by entries, so that nothing is allocated on the way
  std::vector<CutOptions> cuts_;
  LastCuts last_cuts_;
  Candidates candidates_;
  HighestByAge by_age_;
  // Where windows are asked for and bounds are made: a guess of the windows, and the floor
  // down to which no regime outside it is pruned.
  WindowAges guess_;
  double guessed_floor_ = 0;
  // While the windows are sought: what is known of them.
  bool seeking_windows_ = false;
  WindowAges near_;
  double floor_ = 0;
  LatticeRegime regime_;
  const SearchEffort effort_;
  std::uint64_t followed_ = 0;
  bool bounds_tried_ = false;
  std::optional<SearchBounds> bounds_, outside_bounds_;
  std::array<Hurdle, 2> hurdles_;
  std::size_t hurdle_count_ = 0;
  std::uint64_t valued_ = 0;
  bool finished_ = true;
};

}  // namespace staddle
