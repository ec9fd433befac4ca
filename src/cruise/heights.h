// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cruise/tree_list.h"

namespace staddle {

// Fewer measured heights than this tell nothing of the stand.
inline constexpr std::size_t fewest_heights = 3;

// The height curve of the tally; absent with fewer measured heights than fewest_heights.
std::optional<HeightCurve> fit_height_curve(const std::vector<WeighedTree>& trees);

// Every tree's height in feet, measured or else from the curve.
std::vector<double> all_heights_ft(const std::vector<WeighedTree>& trees, const HeightCurve& curve);

struct DominantHeight {
  double height_ft = 0.0;
  std::string rule;
};

// The mean height, weighted by trees per acre, of the dominant and codominant trees where
// crown classes are given, else of the trees at least as thick as the quadratic mean
// diameter. REQUIRES: at least one tree, a height for each.
DominantHeight dominant_height_of(const std::vector<WeighedTree>& trees,
                                  const std::vector<double>& heights_ft, double qmd_in);

}  // namespace staddle
