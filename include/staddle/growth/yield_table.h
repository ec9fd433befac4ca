// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/units/units.h"

namespace staddle {

// How a stand recovers in a user's own yield table, which says nothing about
// thinned stands. Assumptions; both loblolly fits built in lie near them.
struct YieldTableOptions {
  double recovery_per_yr = 0.09;
  double density_exponent = 0.45;
};

// The owner's own unthinned yields, one row an age, rising. Columns as in the CSV.
struct YieldTable {
  std::string file;
  std::vector<int> age_yr;                    // at least 4, strictly rising
  std::vector<double> dominant_height_ft;     // > 0
  std::vector<double> tpa;                    // > 0
  std::vector<double> basal_area_ft2_ac;      // >= 0
  std::vector<std::string> products;          // largest to smallest
  std::vector<std::vector<double>> tons_ac;   // [product][row], >= 0
  YieldTableOptions options;
};

// A table of one fixed regime: its rows already contain the thinnings.
struct TabledThinning {
  int age_yr = 0;
  std::vector<double> tons_ac;      // by product, cut
  double removal_fraction = -1.0;   // of basal area; negative: not given
};
struct TabledRegime {
  std::string name;
  YieldTable table;                 // the row at a cut shows the stand just after it
  std::vector<TabledThinning> thinnings;
};

}  // namespace staddle
