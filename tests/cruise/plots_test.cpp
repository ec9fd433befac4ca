// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/cruise/plots.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <numbers>

#include "staddle/base/contract.h"
#include "support/near.h"

namespace staddle {
namespace {

using support::relative;
using support::round_off;

TEST_CASE("a tree that is in a point sample stands for the factor whatever its size") {
  const PlotDesign design = PlotDesign::point_sample(square_feet_per_acre(10));
  for (const double dbh_in : {0.1, 4.0, 12.5, 40.0}) {
    CHECK(design.basal_area_per_tallied_tree(inches(dbh_in)) == square_feet_per_acre(10));
    const double trees = design.trees_per_tallied_tree(inches(dbh_in)).in(trees_per_acre);
    CHECK(trees * 0.005454154 * dbh_in * dbh_in == relative(10, round_off));
  }
}

TEST_CASE("a tree on a tenth of an acre stands for ten trees whatever its size") {
  const PlotDesign design = PlotDesign::fixed_area(acres(0.1));
  for (const double dbh_in : {0.1, 4.0, 40.0}) {
    CHECK(design.trees_per_tallied_tree(inches(dbh_in)).in(trees_per_acre) ==
          relative(10, round_off));
  }
  CHECK(design.basal_area_per_tallied_tree(inches(10)).in(square_feet_per_acre) ==
        relative(5.454154, round_off));
}

TEST_CASE("a radius of 37.24 feet is a tenth of an acre") {
  const double radius_ft = std::sqrt(4356 / std::numbers::pi);
  CHECK(radius_ft == support::within(37.24, 0.005));
  CHECK(PlotDesign::fixed_radius(feet_across(radius_ft))
            .trees_per_tallied_tree(inches(5))
            .in(trees_per_acre) == relative(10, round_off));
}

TEST_CASE("a plot without a size and a tree without a diameter are refused") {
  for (const double bad : {0.0, -1.0, std::numeric_limits<double>::infinity(), std::nan("")}) {
    CHECK_THROWS_AS(PlotDesign::point_sample(square_feet_per_acre(bad)), ContractViolation);
    CHECK_THROWS_AS(PlotDesign::fixed_area(acres(bad)), ContractViolation);
    CHECK_THROWS_AS(PlotDesign::fixed_radius(feet_across(bad)), ContractViolation);
  }
  const PlotDesign design = PlotDesign::fixed_area(acres(0.1));
  CHECK_THROWS_AS(design.trees_per_tallied_tree(inches(0)), ContractViolation);
}

}  // namespace
}  // namespace staddle
