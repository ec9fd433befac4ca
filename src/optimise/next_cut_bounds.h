// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "optimise/bound_table.h"
#include "optimise/exact_limits.h"
#include "optimise/next_cut_kernels.h"

namespace staddle {

// X1: proved upper bounds on what a stand is worth that is cut at a given age, for the last
// time, without storms. One look-up leaves out all removals of that age.
//
// Take the removal f of a stand (n, C) whose crowns give it the rate kappa afterwards, and
// the plan "harvest at T", worth P_T as in BoundTable. With S the stumpage of a thinning
// and D the discount x net share of its age, the two are worth
//   D S(n, C) - discount x sale cost + W_T(n + l, 1 - rho (1 - C), kappa),  W_T = P_T - D S,
// since what is cut is what stood less what is left. The first two are known where a bound
// is asked for. For the third BoundTable's stored maxima of P_T serve at its own nodes:
//   w = maximum of P_T + allowances - D S + D (K_n h_n^2/8 + K_C h_C^2/8),
// K_n and K_C bounds of S'' there; its trilinear mean is above every W_T, as there. What
// this table stores at the same nodes is
//   max over f of [ mean of w at the image of the node + by how much it bends nearby ].
//
// Proof. The mean of w, seen through one removal, is piecewise linear in n: above the chord
// between two nodes' images it is highest at a node of w between them, and there, piecewise
// linear in C, highest at a node of C. Along C at one node of n it is piecewise linear
// again, and highest above a chord at the nodes of C between two images. In kappa the nodes
// of both tables are the same. So the excesses are found exactly, and with those of the
// adjacent cells added at each node the trilinear mean is above the mean of w, hence above
// W_T of every f and T. A removal is left out at a node only where no stand in the adjacent
// cells has the trees for it; all other limits are ignored, which only raises a bound.
class NextCutBounds {
 public:
  NextCutBounds(const LatticeRules& rules, const SearchTables& tables, const ExactLimits& limits,
                const BoundTable& later);

  const NextCutTable& table() const { return table_; }

 private:
  void find_worth(const SearchTables& tables, const BoundTable& later, int age_yr);
  void lead(const RemovalFactors& factors, const BoundTable& later, int age_yr,
            std::size_t removal);

  NextCutTable table_;
  // While it is made: w of one age, one removal, and the kernel's working space.
  LaneArray worth_;
  CutImage image_;
  LaneArray scratch_;
};

}  // namespace staddle
