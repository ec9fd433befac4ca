// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/cruise/appraisal.h"

namespace staddle::cruise_test {

inline TallyTree tree(double dbh_in) {
  TallyTree result;
  result.dbh = inches(dbh_in);
  return result;
}

inline TallyTree tree(double dbh_in, double height_ft) {
  TallyTree result = tree(dbh_in);
  result.height = feet(height_ft);
  return result;
}

inline PlotDesign prism(double factor) {
  return PlotDesign::point_sample(square_feet_per_acre(factor));
}

// Factor-10 points with so many trees of 8 in and 55 ft each.
inline Tally points_with(const std::vector<int>& counts) {
  Tally tally{prism(10), {}, {}};
  for (std::size_t i = 0; i < counts.size(); ++i) {
    Plot plot{std::to_string(i + 1), "", {}};
    plot.trees.assign(static_cast<std::size_t>(counts[i]), tree(8, 55));
    tally.plots.push_back(plot);
  }
  return tally;
}

inline AppraisalProblem problem_of(const Tally& tally) {
  AppraisalProblem problem{
      tally, {}, {}, default_products(), {}, 0.10, 0.90, default_ready_limits(), 5, age(45)};
  return problem;
}

}  // namespace staddle::cruise_test
