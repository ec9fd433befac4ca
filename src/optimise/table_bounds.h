// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "optimise/lattice_rules.h"

namespace staddle {

// Upper bounds on what the final harvests of a thinned stand are worth, for growth by a
// user's yield table without storms, at a small part of the cost of their values.
//
// After a cut the tree count is a fixed share c of the table's, and with e the exponent of
// density, C the competition index and k its rate of recovery
//   B(T) = B_t(T) c^e (1 - C exp(-k (T - a))),   tons(T) = (Y_t/B_t)(T) B(T),
// numbers without a search. A ton is worth what the table's own mix is worth at an age at
// which the table has this basal area per tree, B/N: no more than the highest price of all
// parts of the table's years that reach this B/N (products/table_columns.h).
class TableBounds {
 public:
  // REQUIRES: growth from a yield table, no hazard, no tax basis.
  TableBounds(const CaseKernel& kernel, const LatticeRules& rules);

  // Writes the bound of a harvest at each age from `from` to the last to bounds[age].
  // REQUIRES: a stand just after a cut.
  void bound(const StandPoint& after_cut, int from, std::vector<double>& bounds) const;

 private:
  double most_price_of(double basal_area_per_tree) const;

  const CaseKernel& kernel_;
  int final_to_;
  double exponent_ = 1;  // e
  // By age: the table's basal area, its ratio of tons to it, its trees, and the discounted
  // money of the years up to it.
  std::vector<double> basal_area_, tons_per_area_, trees_, summed_;
  double least_ = 0, per_step_ = 1;  // of the steps of basal area per tree
  std::vector<double> most_price_;   // by step
  double price_outside_ = 0;
};

}  // namespace staddle
