// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/base/error.h"
#include "staddle/vary/vary_question.h"

namespace staddle {

// Reads a CSV of dated prices, columns date,product,usd_per_ton: ISO dates in any order,
// one row per date and product, a price for every product on every date. Prices come in
// the order of `products`, dates rising. Reports everything wrong, by line.
std::vector<DatedPrices> read_dated_prices(const std::string& text, const std::string& file,
                                           const std::vector<std::string>& products,
                                           Faults& faults);

}  // namespace staddle
