// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/units/units.h"

namespace staddle {

// A unit in which the trade quotes this product (a cord, a thousand board feet).
struct QuotedUnit {
  double usd_per_unit = 0.0;
  double tons_per_unit = 0.0;  // zero: quoted by the ton
};

// Stumpage of one product. The price of a thinning is
// max(0, stumpage x thinning_factor - thinning_discount).
struct ProductPrice {
  Price stumpage;
  double thinning_factor = 1.0;
  Price thinning_discount;
  QuotedUnit quoted;
};

// One entry per product, in the order of the assortment.
using PriceList = std::vector<ProductPrice>;

Price net_thinning_price(const ProductPrice& price);

}  // namespace staddle
