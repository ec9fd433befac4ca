// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/base/result.h"
#include "staddle/growth/yield_table.h"

namespace staddle {

// Reads a yield table from CSV: the columns age_yr, dominant_height_ft, tpa,
// basal_area_ft2_ac in any order, and one <product>_tons_ac column per product, which
// stand in the order largest to smallest product. Faults name line and column.
Result<YieldTable> read_yield_table(const std::string& text, const std::string& file);

}  // namespace staddle
