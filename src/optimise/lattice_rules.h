// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "regime/case_kernel.h"
#include "staddle/optimise/solve.h"

namespace staddle {

// The limits of a stand problem as questions to one point of a regime. Guards and
// limits look at the stand just before the cut (residual: just after), and each passes
// within tolerance::limit_slack.
class LatticeRules {
 public:
  LatticeRules(const StandProblem& problem, const CaseKernel& kernel);

  int max_thinnings() const { return max_thinnings_; }
  int gap_yr() const { return gap_yr_; }
  int final_from() const { return final_from_; }
  int final_to() const { return final_to_; }
  int cut_from() const { return cut_from_; }
  // The last age at which a cut still leaves room for a final harvest.
  int cut_to() const { return cut_to_; }
  const std::vector<double>& removals() const { return removals_; }

  // First age at which this point may be cut again, or sold.
  int next_cut_from(const StandPoint& point) const;
  int next_final_from(const StandPoint& point) const;

  // How many of removals() the largest removal allowed leaves at this age.
  std::size_t removals_allowed(int age_yr) const;

  const Guards& guards() const { return lattice_.guards; }
  // What a cut must leave and yield, per acre, all limits taken together.
  double residual_basal_area_floor() const;
  double least_tons_cut() const;

  // Height, diameter and crown: the same for every removal.
  bool stand_may_be_cut(const Measured& measured) const;
  // Trees and basal area left, tons, and the one-ton rule.
  bool cut_may_be_taken(const Cut& cut) const;
  bool breaks_one_ton_rule(const Cut& cut) const;
  // The limits on tons per acre and per sale.
  bool makes_a_sale(const Cut& cut) const;
  bool keeps_all_but_one_ton_rule(const Cut& cut) const;
  // A removal that would leave neither trees nor basal area is no cut at all.
  bool leaves_trees(double removal, int entry) const;

  // Limits that one cut of a stated regime breaks.
  void note_broken(const ThinningRecord& thinning, int entry,
                   std::vector<BrokenLimit>& broken) const;

  // Regimes that ages, gaps, removals and the count of thinnings leave.
  double count_regimes() const;

 private:
  double largest_removal(int age_yr) const;  // infinite where no guard caps it
  std::size_t products_;
  const CaseKernel& kernel_;
  const DecisionLattice& lattice_;
  double acres_;
  int max_thinnings_, gap_yr_, cut_from_, cut_to_, final_from_, final_to_;
  bool dense_now_ = false;
  std::vector<double> removals_;
};

// Whether the first thinning may take this share of the lattice.
inline bool first_removal_asked(const StandOptions& options, double removal_fraction) {
  return !options.first_removal_fraction || *options.first_removal_fraction == removal_fraction;
}

// The stand may not be thinned to fewer trees than this; project convention.
inline constexpr double fewest_trees_left = 30.0;
// No product may stand more than this higher after a cut; tons per acre.
inline constexpr double most_rise_of_a_product = 1.0;

}  // namespace staddle
