// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/stand/stand_measures.h"

#include <cmath>
#include <limits>

#include "stand/stand_constants.h"

namespace staddle {

Diameter quadratic_mean_diameter(TreeDensity trees, BasalArea basal_area) {
  const double tpa = trees.in(trees_per_acre);
  if (tpa <= 0.0) return inches(0);
  return inches(std::sqrt(basal_area.in(square_feet_per_acre) / (basal_area_factor * tpa)));
}

double slenderness(Height dominant_height, Diameter quadratic_mean_diameter) {
  const double diameter_in = quadratic_mean_diameter.in(inches);
  if (diameter_in <= 0.0) return std::numeric_limits<double>::infinity();
  return inches_per_foot * dominant_height.in(feet) / diameter_in;
}

double stand_density_index(TreeDensity trees, Diameter quadratic_mean_diameter) {
  constexpr double reineke_slope = 1.605;
  constexpr double index_diameter_in = 10.0;
  return trees.in(trees_per_acre)*std::pow(quadratic_mean_diameter.in(inches) / index_diameter_in,
                                           reineke_slope);
}

double relative_spacing(TreeDensity trees, Height dominant_height) {
  return std::sqrt(square_feet_of_an_acre / trees.in(trees_per_acre)) / dominant_height.in(feet);
}

}  // namespace staddle
