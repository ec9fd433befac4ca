// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/cruise/plots.h"

#include <cmath>
#include <numbers>

#include "staddle/base/contract.h"
#include "stand/stand_constants.h"

namespace staddle {
namespace {

double positive(double value) {
  require(std::isfinite(value) && value > 0.0, "a plot has a size above zero");
  return value;
}

double tree_basal_area_ft2(Diameter dbh) {
  require(dbh > inches(0), "a tallied tree has a diameter above zero");
  return basal_area_factor * dbh.in(inches)*dbh.in(inches);
}

}  // namespace

PlotDesign PlotDesign::point_sample(BasalArea factor) {
  return PlotDesign(true, positive(factor.in(square_feet_per_acre)));
}

PlotDesign PlotDesign::fixed_area(Area plot) { return PlotDesign(false, positive(plot.in(acres))); }

PlotDesign PlotDesign::fixed_radius(Distance radius) {
  const double r = positive(radius.in(feet_across));
  return fixed_area(acres(std::numbers::pi * r * r / square_feet_of_an_acre));
}

TreeDensity PlotDesign::trees_per_tallied_tree(Diameter dbh) const {
  const double basal_area_ft2 = tree_basal_area_ft2(dbh);
  return trees_per_acre(point_sample_ ? factor_or_acres_ / basal_area_ft2 : 1.0 / factor_or_acres_);
}

BasalArea PlotDesign::basal_area_per_tallied_tree(Diameter dbh) const {
  const double basal_area_ft2 = tree_basal_area_ft2(dbh);
  return square_feet_per_acre(point_sample_ ? factor_or_acres_ : basal_area_ft2 / factor_or_acres_);
}

double plot_radius_factor_ft_per_in(BasalArea factor) {
  const double factor_ft2_ac = positive(factor.in(square_feet_per_acre));
  return std::sqrt(square_feet_of_an_acre * basal_area_factor / (std::numbers::pi * factor_ft2_ac));
}

}  // namespace staddle
