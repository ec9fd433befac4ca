// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <vector>

#include "optimise/lattice_rules.h"

namespace staddle {

// More lanes than any vector has: arrays are this much longer than what they hold, so
// that the last vector may read and write past the end.
inline constexpr std::size_t lane_padding = 16;

// Removals as factors, for one cut diameter ratio. By index of LatticeRules::removals().
struct RemovalFactors {
  std::vector<double> log_trees;   // ln(1 - f/q^2)
  std::vector<double> log_basal;   // ln(1 - f)
  std::vector<double> top_factor;  // of X1
  std::vector<double> dbh_factor;  // of X2
  std::vector<bool> leaves_trees;
};

// The case and its lattice as arrays by whole age, for vector arithmetic. In
// n = ln N and w = ln(1 - CI) everything of a stand is affine at one age:
//   ln Y  = tons_constant + tons_n n + tons_w w
//   ln Dq = diameter_constant + diameter_n n + w/2
//   X1 = exp(-m2 ln Dq), X2 = exp(m4 n - m5 ln Dq)
//   M_j = exp(ln Y + top_term_j X1 + dbh_term_j X2),  tons_i = sum_j coefficient_ij M_j
// Money is dollars per acre. Only growth from equations; a yield table has no such form.
struct SearchTables {
  SearchTables(const CaseKernel& kernel, const LatticeRules& rules);

  // By age. Valid from `first_yr` on; what stands after `last_yr` is padding.
  int first_yr = 0, last_yr = 0;
  std::vector<double> survival, log_basal_constant, log_basal_n;
  std::vector<double> tons_constant, tons_n, tons_w, tons_trees, tons_basal;
  std::vector<double> diameter_constant, diameter_n;
  std::vector<double> height_ft, crown_slope;  // ln(1 - CR) = crown_slope x Dq
  std::vector<double> discount, land_discount, other_timber;
  std::vector<double> yearly_before, yearly_after, practices;        // of the year
  std::vector<double> summed_before, summed_after;  // discounted sums, practices included
  std::vector<double> land_factor;  // 1/(1 - beta) of a harvest without storms; standing: 1

  double survival_floor = 0, survival_exponent = 1;
  double top_power = 0, tree_power = 0, dbh_power = 0;
  std::size_t terms = 0, products = 0;
  std::vector<double> top_term, dbh_term;          // by term
  std::vector<double> final_weight;                // by term: price of M in a final harvest
  std::vector<double> coefficient;                 // [product x terms + term]
  std::vector<double> final_price, thinning_price; // by product

  double net_share = 1, thinning_sale_cost = 0, final_sale_cost = 0;
  double delay_money = 0, delay_discount = 1, land_value = 0;
  bool standing = false, crown_limited = true;
  double crown_offset = 0, recovery_per_yr = 0, growth_multiplier = 1;
  // A standing stand whose growth is multiplied: tons are multiplier x plain + offset.
  bool has_offsets = false;

  std::vector<PerilKernel> perils;
  double storm_recovery_yr = 5;

  std::vector<RemovalFactors> removals;  // by entry; the last repeats
  const RemovalFactors& removals_at(int entry) const {
    return removals[std::min(static_cast<std::size_t>(entry), removals.size() - 1)];
  }

  // What a regime's value may be off by when vector arithmetic computes it: the slack of
  // tolerance.h, and a share of the largest amounts that enter, which may cancel.
  double slack(double value) const;
  double rounding = 0;

 private:
  void take_growth(const CaseKernel& kernel);
  void take_money(const CaseKernel& kernel);
  void take_removals(const CaseKernel& kernel, const LatticeRules& rules);
};

}  // namespace staddle
