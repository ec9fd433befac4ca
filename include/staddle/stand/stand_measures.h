// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "staddle/units/age.h"
#include "staddle/units/units.h"

namespace staddle {

// What a forester would measure in the stand at one moment.
struct StandMeasures {
  TreeDensity trees;
  BasalArea basal_area;
  Diameter quadratic_mean_diameter;
  Height dominant_height;
  std::optional<double> live_crown_ratio;  // absent below age 8: not meaningful there
};

// Diameter of the tree of mean basal area: sqrt(B / (0.005454154 N)), zero where
// there are no trees. The constant is pi / (4 * 144), square inches to square feet.
Diameter quadratic_mean_diameter(TreeDensity trees, BasalArea basal_area);

// Height over diameter in the same unit, 12 H / Dq: the usual measure of a slender
// stand. Infinite where the diameter is zero.
double slenderness(Height dominant_height, Diameter quadratic_mean_diameter);

// Stand density index with the slope 1.605 (Reineke 1933): trees per acre of a stand
// of the same crowding at a quadratic mean diameter of 10 inches.
double stand_density_index(TreeDensity trees, Diameter quadratic_mean_diameter);

// Mean distance between trees over dominant height, sqrt(43560 / N) / H.
double relative_spacing(TreeDensity trees, Height dominant_height);

}  // namespace staddle
