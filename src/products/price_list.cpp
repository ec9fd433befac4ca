// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/products/price_list.h"

#include <algorithm>

namespace staddle {

Price net_thinning_price(const ProductPrice& price) {
  return std::max(dollars_per_ton(0),
                  price.stumpage * price.thinning_factor - price.thinning_discount);
}

}  // namespace staddle
