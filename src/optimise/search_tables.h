// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <vector>

#include "optimise/lattice_rules.h"

namespace staddle {

// The numbers of the vector search. Single precision has twice the lanes and shorter
// series, so it is about three times as fast; what it loses, cents in a thousand dollars,
// SearchTables::slack() gives back before anything is discarded.
using Lane = float;
using LaneArray = std::vector<Lane>;

// More lanes than any vector has: arrays are this much longer than what they hold, so
// that the last vector may read and write past the end.
inline constexpr std::size_t lane_padding = 16;

inline double wide(Lane value) { return static_cast<double>(value); }

// Removals as factors, for one cut diameter ratio. By index of LatticeRules::removals().
struct RemovalFactors {
  LaneArray log_trees;   // ln(1 - f/q^2)
  LaneArray log_basal;   // ln(1 - f)
  LaneArray top_factor;  // of X1
  LaneArray dbh_factor;  // of X2
  LaneArray trees_left;  // 1 - f/q^2
  LaneArray basal_left;  // 1 - f
  LaneArray density_left;  // [age][removal]: 1 - CI after over 1 - CI before
  std::size_t row = 0;     // of density_left
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
  LaneArray survival, log_basal_constant, log_basal_n;
  LaneArray tons_constant, tons_n, tons_w, tons_trees, tons_basal;
  LaneArray diameter_constant, diameter_n;
  LaneArray height_ft, crown_slope;  // ln(1 - CR) = crown_slope x Dq
  LaneArray discount, land_discount, other_timber;
  LaneArray yearly_before, yearly_after, practices;        // of the year
  LaneArray summed_before, summed_after;  // discounted sums, practices included
  LaneArray land_factor;  // 1/(1 - beta) of a harvest without storms; standing: 1

  double survival_floor = 0, survival_exponent = 1;
  double top_power = 0, tree_power = 0, dbh_power = 0;
  std::size_t terms = 0, products = 0;
  LaneArray top_term, dbh_term;          // by term
  LaneArray final_weight, thinning_weight;  // by term: price of M when it is sold
  LaneArray coefficient;                 // [product x terms + term]
  LaneArray final_price, thinning_price; // by product

  double net_share = 1, thinning_sale_cost = 0, final_sale_cost = 0;
  double delay_money = 0, delay_discount = 1, land_value = 0;
  bool standing = false, crown_limited = true;
  double crown_offset = 0, recovery_per_yr = 0, growth_multiplier = 1;
  // A standing stand whose growth is multiplied: tons are multiplier x plain + offset.
  bool has_offsets = false;

  std::vector<PerilKernel> perils;
  double storm_recovery_yr = 5;

  int earliest_cut_yr = 0;
  // Hull of w = ln(1 - CI) over all states of the lattice.
  double least_log_density = 0, most_log_density = 0;

  std::vector<RemovalFactors> removals;  // by entry; the last repeats
  const RemovalFactors& removals_at(int entry) const {
    return removals[std::min(static_cast<std::size_t>(entry), removals.size() - 1)];
  }

  // Most by which an approximate value of a regime is off the plain evaluator's: 100 last
  // bits (6e-8) of the largest amounts that enter, and 50 for every cut behind it. To first
  // order ln Y, X1 and X2 carry the rounding of sums of few terms below 10, stretched by
  // the powers 4 and 6 of diameter; met were 10 bits. A test holds random regimes to it.
  double rounding = 0;
  // Below (highest approximate value - slack) no regime can be the best, nor tie with it.
  double slack(double value) const;

 private:
  void take_growth(const CaseKernel& kernel);
  void take_money(const CaseKernel& kernel);
  void take_removals(const CaseKernel& kernel, const LatticeRules& rules);
  void bound_density(const CaseKernel& kernel, const LatticeRules& rules);
  void bound_rounding(const CaseKernel& kernel, const LatticeRules& rules);
};

}  // namespace staddle
