// SPDX-License-Identifier: GPL-3.0-or-later
#include "cruise/heights.h"

#include <algorithm>
#include <cmath>

#include "staddle/base/contract.h"
#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

constexpr double breast_height_ft = 4.5;

double curve_height_ft(const HeightCurve& curve, double dbh_in) {
  return breast_height_ft + std::exp(curve.intercept + curve.slope_in / dbh_in);
}

bool stands_above_the_rest(const TallyTree& tree) {
  return tree.crown_class == CrownClass::dominant || tree.crown_class == CrownClass::codominant;
}

}  // namespace

Height HeightCurve::at(Diameter dbh) const {
  require(dbh > inches(0), "a height curve is asked for a diameter above zero");
  return feet(curve_height_ft(*this, dbh.in(inches)));
}

std::optional<HeightCurve> fit_height_curve(const std::vector<WeighedTree>& trees) {
  std::vector<std::pair<double, double>> points;  // 1/dbh, ln(height above breast height)
  for (const WeighedTree& tree : trees) {
    if (!tree.tree->height) continue;
    const double above_ft = tree.tree->height->in(feet)-breast_height_ft;
    require(above_ft > 0.0, "a tallied tree is higher than breast height");
    points.emplace_back(1.0 / tree.dbh_in, std::log(above_ft));
  }
  if (points.size() < fewest_heights) return std::nullopt;
  const double count = static_cast<double>(points.size());
  double mean_x = 0.0;
  double mean_y = 0.0;
  for (const auto& [x, y] : points) {
    mean_x += x / count;
    mean_y += y / count;
  }
  double xx = 0.0;
  double xy = 0.0;
  for (const auto& [x, y] : points) {
    xx += (x - mean_x) * (x - mean_x);
    xy += (x - mean_x) * (y - mean_y);
  }
  HeightCurve curve;
  // Trees all of one diameter say nothing of the slope.
  curve.slope_in = xx > tolerance::limit_slack * mean_x * mean_x ? std::min(0.0, xy / xx) : 0.0;
  curve.intercept = mean_y - curve.slope_in * mean_x;
  curve.measured = points.size();
  curve.filled = trees.size() - points.size();
  return curve;
}

std::vector<double> all_heights_ft(const std::vector<WeighedTree>& trees,
                                   const HeightCurve& curve) {
  std::vector<double> heights;
  for (const WeighedTree& tree : trees) {
    heights.push_back(tree.tree->height ? tree.tree->height->in(feet)
                                        : curve_height_ft(curve, tree.dbh_in));
  }
  return heights;
}

DominantHeight dominant_height_of(const std::vector<WeighedTree>& trees,
                                  const std::vector<double>& heights_ft, double qmd_in) {
  const bool by_class = std::any_of(trees.begin(), trees.end(), [](const WeighedTree& tree) {
    return stands_above_the_rest(*tree.tree);
  });
  double sum = 0.0;
  double weight = 0.0;
  for (std::size_t i = 0; i < trees.size(); ++i) {
    // The mean of squares of one diameter may round to just above it.
    const bool thick = trees[i].dbh_in >= qmd_in * (1.0 - tolerance::limit_slack);
    if (!(by_class ? stands_above_the_rest(*trees[i].tree) : thick)) continue;
    sum += trees[i].tpa * heights_ft[i];
    weight += trees[i].tpa;
  }
  require(weight > 0.0, "some tree is at least as thick as the quadratic mean");
  return {sum / weight,
          by_class ? "mean height of the dominant and codominant trees, each weighted by the "
                     "trees per acre it stands for"
                   : "mean height of the trees at least as thick as the quadratic mean diameter, "
                     "each weighted by the trees per acre it stands for; no crown classes given"};
}

}  // namespace staddle
