// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "staddle/stand/stand_measures.h"
#include "support/near.h"

namespace staddle {
namespace {

using support::within;

// Larsen, forestry function notes, University of Missouri.
TEST_CASE("published quadratic mean diameter follows from trees and basal area") {
  const Diameter diameter = quadratic_mean_diameter(trees_per_acre(200), square_feet_per_acre(80));
  CHECK(diameter.in(inches) == within(8.56, 0.005));
}

// The same notes; Reineke's exponent 1.605.
TEST_CASE("published stand density index follows from trees and diameter") {
  CHECK(stand_density_index(trees_per_acre(200), inches(12.3)) == within(278.8, 0.05));
}

}  // namespace
}  // namespace staddle
