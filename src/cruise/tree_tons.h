// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "cruise/tree_list.h"

namespace staddle {

// The tons of every tree by product, per acre of its own plot.
struct TreeTons {
  std::vector<std::vector<double>> by_tree;  // [tree][product]
};

// A tree weighs in proportion to dbh^2 x height, all trees of the tract together
// `total_tons_ac`. One thinner than the smallest product holds no product. The others
// stand in the class of their product column, else in the largest whose diameter they
// reach; to a top of t inches they hold the share exp(m1 (t/dbh)^m2) of their weight, and
// what lies between the top of the class and the smallest top goes to the smallest
// product. Where no cruiser judged the tree, the grade fraction of its class sends the
// rest of the class's own tons to the next smaller product, as in the equations.
TreeTons weigh_trees(const std::vector<WeighedTree>& trees, const std::vector<double>& heights_ft,
                     double total_tons_ac, const EquationSet& equations,
                     const std::vector<ProductLimit>& products);

}  // namespace staddle
