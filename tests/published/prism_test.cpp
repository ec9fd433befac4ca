// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <string>

#include "published/stand_fixture.h"
#include "staddle/cruise/plots.h"
#include "support/near.h"

namespace staddle {
namespace {

using support::within;

// Trees per acre for every tree tallied with a factor-10 prism, from three published tables.
// Two of them divide by a rounded basal area, hence a share of the value.
double allowed_error(const std::string& source, double printed) {
  if (source == "SREF handbook") return 0.006 * printed;
  if (source == "Penn State") return 0.003 * printed;
  return 0.015;
}

TEST_CASE("published prism tables give the trees per acre of a tallied tree") {
  const PlotDesign prism = PlotDesign::point_sample(square_feet_per_acre(10));
  int checked = 0;
  for (const auto& row : published::rows_of("prism_tree_factors.csv")) {
    CAPTURE(row[0], row[1]);
    const double printed = std::stod(row[4]);
    const double computed =
        prism.trees_per_tallied_tree(inches(std::stod(row[1]))).in(trees_per_acre);
    CHECK(computed == within(printed, allowed_error(row[0], printed)));
    ++checked;
  }
  CHECK(checked == 54);
}

// University of Florida, slides on point sampling.
TEST_CASE("published plot radius factors follow from the basal area factor") {
  CHECK(plot_radius_factor_ft_per_in(square_feet_per_acre(10)) == within(2.75, 0.001));
  CHECK(plot_radius_factor_ft_per_in(square_feet_per_acre(20)) == within(1.944, 0.001));
}

}  // namespace
}  // namespace staddle
