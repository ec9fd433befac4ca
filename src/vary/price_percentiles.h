// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "staddle/vary/vary_question.h"

namespace staddle {

// p10 .. p90: every product at its own percentile over the dates.
// REQUIRES: at least one date.
std::vector<PriceScenario> percentiles_by_product(const std::vector<DatedPrices>& dates);

// joint p10 .. joint p90: the dates ranked by what these tons (per product) would have
// sold for; ties by date.
std::vector<PriceScenario> joint_percentiles(const std::vector<DatedPrices>& dates,
                                             const std::vector<Yield>& tons);

}  // namespace staddle
