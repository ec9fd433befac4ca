// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "optimise/bound_kernels.h"

namespace staddle {

// How fine the nodes stand. It hardly matters for speed and never for truth.
struct BoundGrid {
  double spacing_of_log_tpa = 0.3;
  std::size_t rates = 5;
  double allowances = 1.0;  // scales E: with 0 nothing is proved, to test the tests by
};

// V0: proved upper bounds on what a thinned stand is worth when it is never cut again
// before its final harvest, without storms.
//
// A state at age a is (n, C, kappa): n = ln N, C the competition index, kappa its rate of
// recovery. One plan "harvest at T" is worth
//   P_T(n, C, kappa) = discount_T net_share S_T(n_T(n), C e^(-kappa (T-a))) + money_T,
// S the stumpage value at T, and V0 = max over T of P_T. The grid: nodes of n are tracks
// of survival (node i at age a grows exactly into node i at T; at or below the survival
// floor trees stay); C uniform; kappa uniform on [0, k], a coordinate of its own, so that
// the kinks of the crown clamp never enter. What a table stores at a node is
//   max over T of [ P_T at the node + E_n + E_C + E_kappa ],
// and a lookup is trilinear; outside the grid nothing is pruned.
//
// Proof. A function whose second derivative is >= -K on an interval of length h lies below
// its chord + K h^2/8. Take one plan, first in n, then in C at a node of n, then in kappa
// at nodes (n, C): it is at most the trilinear mean of its corner values + the three
// allowances; a corner's stored maximum is at least its value + the allowances of every
// adjacent cell, for this T. So the plan is at most the lookup, and so is the best plan.
//   E_C     = K_C h^2/8 (S itself is interpolated in C) + K_C h^2 e^(-2 kappa (T-a))/8
//             (C at T is linear in C now)
//   E_kappa = h_k^2/8 (T-a)^2 (c S_C + c^2 K_C), c the largest |C| e^(-kappa (T-a)): the
//             second derivative of S(C e^(-kappa D)) is D^2 (C_T S' + C_T^2 S'')
//   E_n     = K_n h_T^2/8 + S_n dev, dev the deviation of n_T(n) from its chord: with
//             u = N - floor its slope is s = (u_T/u)^(1+e) N/N_T, the first factor falling
//             and the second rising in u, so s lies within [A(hi) R(lo), A(lo) R(hi)] over
//             a cell and dev <= h (s_max - s_min)/4
// K_C, S_C bound -S'' and |S'| in C at the node, K_n, S_n the same in n over the cell and
// all C: see bound_kernels.h. Ignoring limits of later cuts only raises a bound.
class BoundTable {
 public:
  // For states after a cut of the lattice; only harvests at ages that count. `land` is the
  // worth of an acre bare again. Absent where the equations are outside what is proved.
  static std::optional<BoundTable> make(const CaseKernel& kernel, const LatticeRules& rules,
                                        const SearchTables& tables, double land,
                                        const std::vector<bool>& final_counts,
                                        const BoundGrid& grid = {});

  const BoundSlice& at(int age_yr) const {
    return slices_[static_cast<std::size_t>(age_yr - first_age_yr_)];
  }
  double land() const { return land_; }
  // For tables that build on this one.
  int first_age_yr() const { return first_age_yr_; }
  int last_age_yr() const { return last_age_yr_; }
  std::size_t tracks() const { return tracks_.size(); }
  std::size_t rates() const { return slices_.empty() ? 1 : slices_.front().rates; }
  double log_tpa(std::size_t node, int age_yr) const {
    return log_tpa_[static_cast<std::size_t>(age_yr) * tracks_.size() + node];
  }
  const CompetitionGrid& competition() const { return grid_; }
  double allowances() const { return fineness_.allowances; }

 private:
  BoundTable() = default;
  static bool is_proved_for(const SearchTables& tables);
  void make_grid(const CaseKernel& kernel, const SearchTables& tables);
  void price_lines(const SearchTables& tables, const std::vector<bool>& final_counts);
  void fill(const LatticeRules& rules, const SearchTables& tables,
            const std::vector<bool>& final_counts, int age_yr);
  double allowance_of_trees(const SearchTables& tables, int age_yr, int final_yr,
                            std::size_t cell) const;
  void raise_by_plan(const SearchTables& tables, int age_yr, int final_yr, BoundSlice& slice);
  double rate(std::size_t node) const { return rate_step_ * static_cast<double>(node); }

  // How the worth of a harvest bends at one final age and node of n.
  struct Line {
    double competition_curve = 0, competition_slope = 0;  // K_C, S_C
    double trees_curve = 0, trees_slope = 0;  // K_n, S_n of the cell above the node
  };
  const Line& line(int final_yr, std::size_t node) const {
    return lines_[static_cast<std::size_t>(final_yr) * tracks_.size() + node];
  }
  double trees(std::size_t node, int age_yr) const {
    return trees_[static_cast<std::size_t>(age_yr) * tracks_.size() + node];
  }

  int first_age_yr_ = 0, last_age_yr_ = 0;
  double land_ = 0;
  BoundGrid fineness_;
  std::vector<TreeTrack> tracks_;   // rising
  std::vector<double> trees_, log_tpa_;  // [age][node]
  CompetitionGrid grid_;
  double rate_step_ = 0;
  std::vector<Line> lines_;         // [final age][node]
  LaneArray line_values_;           // [final age][node][C]: stumpage x discount x net share
  std::vector<PlanTerms> terms_;    // of one plan, by node
  std::vector<BoundSlice> slices_;  // by age
};

}  // namespace staddle
