// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <vector>

#include "staddle/growth/yield_table.h"

namespace staddle {

// One column of a tabled regime at every whole age from the first row to the last, just
// before any cut of that age. Index 0 is the first row's age.
//
// Between cuts the column is interpolated by itself: by the shape-keeping curve where the
// stretch has at least four rows, straight from row to row where it has fewer.
// `before_cut(row value, thinning)` is the column's value just before the cut at that row.
std::vector<double> column_before_cuts(
    const TabledRegime& regime, const std::vector<double>& column,
    const std::function<double(double row_value, const TabledThinning&)>& before_cut);

// The row of a whole age. REQUIRES: the table has one.
std::size_t row_of_age(const YieldTable& table, int age_yr);

// Height, trees, basal area and tons just before any cut, by whole age from the first row.
struct TabledAges {
  int first_age_yr = 0;
  std::vector<double> height_ft, tpa, basal_area_ft2_ac;
  std::vector<std::vector<double>> tons_ac;  // [product][age]
};
TabledAges ages_before_cuts(const TabledRegime& regime);

}  // namespace staddle
