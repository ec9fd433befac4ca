// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "staddle/growth/equation_set.h"
#include "staddle/regime/simulate.h"

namespace staddle {

// Something beyond the range to which the growth equations were fitted.
struct OutsideRange {
  std::string what;        // "age_yr", "tpa", "site_index_ft"
  double value = 0.0;      // the farthest one that is leaned on
  double low = 0.0, high = 0.0;
  std::string of;          // what leans on it: "best", "successor" or a regime's name
};

// The equations behind a plan, and their site.
struct FittedEquations {
  const EquationSet& equations;
  std::optional<Height> site_index;
};

// The farthest of each kind on which the value of a plan leans: the trees planted, or the
// stand as measured; the stand before and after every cut; and the final harvest.
std::vector<OutsideRange> outside_fitted_range(const FittedEquations& fitted,
                                               const RegimeReport& plan, const std::string& of);

// The farthest of each kind in any year of a plan.
std::vector<OutsideRange> outside_fitted_range_by_year(const FittedEquations& fitted,
                                                       const RegimeReport& plan);

}  // namespace staddle
