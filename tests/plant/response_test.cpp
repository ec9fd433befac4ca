// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>

#include "staddle/growth/establishment_response.h"
#include "staddle/base/contract.h"
#include "staddle/growth/growth_model.h"
#include "support/loblolly_equations.h"
#include "support/near.h"

namespace staddle::plant_tests {
namespace {

using support::relative;
using support::round_off;

const Height site = feet(68);
const TreeDensity planted = trees_per_acre(600);

GrowthModel grown(const EquationSet& set, const EstablishmentResponse& response,
                  TreeDensity trees = planted) {
  return GrowthModel::from_equations(set, site, trees, response);
}

EstablishmentResponse gained(double years) {
  EstablishmentResponse response;
  response.years_gained = years;
  return response;
}

}  // namespace

TEST_CASE("years gained grow in evenly over five years and then stay") {
  CHECK(equation_age(0, 2.5) == 0.0);
  CHECK(equation_age(2, 2.5) == 3.0);
  CHECK(equation_age(5, 2.5) == 7.5);
  CHECK(equation_age(30, 2.5) == 32.5);
  CHECK(equation_age(4, -2.5) == 2.0);
  CHECK(equation_age(12, 0) == 12.0);
}

TEST_CASE("a stand that gained whole years is the equations' stand of so many years later") {
  for (const EquationSet& set : {support::coastal_loblolly(), support::upland_loblolly()}) {
    const GrowthModel plain = grown(set, {}), ahead = grown(set, gained(3));
    for (const int at : {5, 12, 25, 40}) {
      CAPTURE(set.id, at);
      const Age now = age(at), then = age(at + 3);
      CHECK(ahead.dominant_height(now).in(feet) ==
            relative(plain.dominant_height(then).in(feet), round_off));
      CHECK(ahead.planted_stand_trees(now).in(trees_per_acre) ==
            relative(plain.planted_stand_trees(then).in(trees_per_acre), round_off));
      CHECK(ahead.planted_stand_basal_area(now).in(square_feet_per_acre) ==
            relative(plain.planted_stand_basal_area(then).in(square_feet_per_acre), round_off));
    }
  }
}

TEST_CASE("hardwoods take their share of basal area and nothing of height and trees") {
  const EquationSet set = support::upland_loblolly();
  EstablishmentResponse response;
  response.hardwood_percent = 30;
  const GrowthModel clean = grown(set, {}), mixed = grown(set, response);
  for (const int at : {8, 15, 30}) {
    CAPTURE(at);
    CHECK(mixed.planted_stand_basal_area(age(at)).in(square_feet_per_acre) ==
          relative(clean.planted_stand_basal_area(age(at)).in(square_feet_per_acre)*std::exp(
                       -0.003689 * 30),
                   round_off));
    CHECK(mixed.dominant_height(age(at)) == clean.dominant_height(age(at)));
    CHECK(mixed.planted_stand_trees(age(at)) == clean.planted_stand_trees(age(at)));
  }
}

TEST_CASE("equations without a response to hardwoods take none") {
  EstablishmentResponse response;
  response.hardwood_percent = 1;
  CHECK_THROWS_AS(grown(support::coastal_loblolly(), response), ContractViolation);
}

TEST_CASE("a young stand thinned has its seedlings before and the equations' basal area after") {
  const EquationSet set = support::coastal_loblolly();
  const TreeDensity seedlings = trees_per_acre(3000), left = trees_per_acre(600);
  EstablishmentResponse response;
  response.precommercial = PrecommercialThinning{age(4), left};
  const GrowthModel wild = grown(set, {}, seedlings), tended = grown(set, response, seedlings);
  for (int at = 0; at < 4; ++at) {
    CAPTURE(at);
    CHECK(tended.planted_stand_trees(age(at)).in(trees_per_acre) ==
          relative(wild.planted_stand_trees(age(at)).in(trees_per_acre), 1e-10));
  }
  CHECK(tended.planted_stand_trees(age(4)).in(trees_per_acre) == relative(600, 1e-10));
  for (const int at : {5, 15, 30}) {
    CAPTURE(at);
    const TreeDensity survivors = wild.surviving_trees(left, age(4), age(at));
    CHECK(tended.planted_stand_trees(age(at)).in(trees_per_acre) ==
          relative(survivors.in(trees_per_acre), 1e-10));
    CHECK(tended.planted_stand_basal_area(age(at)).in(square_feet_per_acre) ==
          relative(wild.unthinned_basal_area(age(at), survivors).in(square_feet_per_acre), 1e-10));
  }
}

TEST_CASE("a young stand that mortality has thinned further loses nothing more") {
  const EquationSet set = support::coastal_loblolly();
  const GrowthModel plain = grown(set, {});
  EstablishmentResponse response;
  response.precommercial =
      PrecommercialThinning{age(10), plain.planted_stand_trees(age(10)) + trees_per_acre(1)};
  const GrowthModel tended = grown(set, response);
  for (const int at : {0, 9, 10, 30}) {
    CHECK(tended.planted_stand_trees(age(at)) == plain.planted_stand_trees(age(at)));
  }
}

TEST_CASE("a stand cannot lose more years than it has") {
  CHECK_THROWS_AS(grown(support::coastal_loblolly(), gained(-5)), ContractViolation);
  CHECK_NOTHROW(grown(support::coastal_loblolly(), gained(-3)));
}

}  // namespace staddle::plant_tests
