// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <vector>

#include "optimise/regime_pool_tree.h"

namespace staddle {

// The coefficients of one regime's value, before beta is divided out:
//   F by product, H by product, c, beta.
struct PoolCoefficients {
  ProductTons final{};     // discounted tons sold at final prices
  ProductTons thinning{};  // at net thinning prices
  double money = 0;        // all else, without establishment and land
  double land_weight = 0;  // beta
};

// Tells the coefficients of every regime of the tree, in its order. `kernel`: of a case
// that grows as the tree did, with prices and establishment of 0.
using PoolListener =
    std::function<void(const PoolCoefficients&, std::size_t stretch, int final_yr)>;
void price_tree(const PoolTree& tree, const CaseKernel& kernel, const PoolListener& listener);

}  // namespace staddle
