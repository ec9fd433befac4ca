// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/scenario/measured_stand.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "scenario/scenario_by_hand.h"
#include "staddle/regime/simulate.h"
#include "staddle/scenario/problems.h"
#include "support/near.h"

namespace staddle {
namespace {

using scenario_tests::standing_by_hand;
using scenario_tests::table_by_hand;
using support::relative;
using support::round_off;

MeasuredStand grown(const Scenario& scenario, double span) {
  return grown_unthinned(*scenario.stand.standing, growth_model_of(scenario.stand),
                         recovery_per_yr(scenario.stand.source), years(span));
}

TEST_CASE("growing for no time changes nothing") {
  Scenario scenario = standing_by_hand();
  scenario.stand.standing->live_crown_ratio = 0.4;
  const MeasuredStand now = grown(scenario, 0);
  CHECK(now.at == age(17));
  CHECK(now.trees.in(trees_per_acre) == relative(480, round_off));
  CHECK(now.basal_area.in(square_feet_per_acre) == relative(132, round_off));
  CHECK(*now.live_crown_ratio == relative(0.4, round_off));
}

TEST_CASE("growing three years and four is growing seven") {
  Scenario scenario = standing_by_hand();
  scenario.stand.standing->live_crown_ratio = 0.45;
  scenario.stand.standing->other_timber.push_back(
      {"oak", tons_per_acre(8), 0.02, dollars_per_ton(6)});
  const MeasuredStand at_once = grown(scenario, 7);
  Scenario between = scenario;
  between.stand.standing = grown(scenario, 3);
  const MeasuredStand in_steps = grown(between, 4);
  CHECK(in_steps.at == age(24));
  CHECK(in_steps.trees.in(trees_per_acre) == relative(at_once.trees.in(trees_per_acre), round_off));
  CHECK(in_steps.basal_area.in(square_feet_per_acre) ==
        relative(at_once.basal_area.in(square_feet_per_acre), round_off));
  CHECK(*in_steps.live_crown_ratio == relative(*at_once.live_crown_ratio, round_off));
  CHECK(in_steps.other_timber[0].now.in(tons_per_acre) ==
        relative(8 * std::pow(1.02, 7), round_off));
}

TEST_CASE("a stand grown to the present is the stand that the evaluator grows") {
  const Scenario scenario = standing_by_hand();
  const std::vector<YearRecord> years_told =
      grow_unthinned(make_problems(scenario).stand.stand_case, age(27));
  const MeasuredStand later = grown(scenario, 10);
  const StandMeasures& told = years_told.back().measures;
  REQUIRE(years_told.back().at == age(27));
  CHECK(later.trees.in(trees_per_acre) == relative(told.trees.in(trees_per_acre), round_off));
  CHECK(later.basal_area.in(square_feet_per_acre) ==
        relative(told.basal_area.in(square_feet_per_acre), round_off));
}

TEST_CASE("the first deviation decays by the published rate and a dense stand comes down") {
  Scenario scenario = standing_by_hand();
  const GrowthModel growth = growth_model_of(scenario.stand);
  for (const double basal_area : {90.0, 132.0, 190.0}) {
    CAPTURE(basal_area);
    scenario.stand.standing->basal_area = square_feet_per_acre(basal_area);
    const MeasuredStand later = grown(scenario, 5);
    const auto deviation = [&](const MeasuredStand& stand) {
      return 1 - stand.basal_area / growth.unthinned_basal_area(stand.at, stand.trees);
    };
    CHECK(deviation(later) ==
          relative(deviation(*scenario.stand.standing) * std::exp(-0.110521 * 5),
                   support::two_methods));
  }
}

TEST_CASE("a measured crown keeps its distance from the crown equation and stays within 0 and 1") {
  Scenario scenario = standing_by_hand();
  const GrowthModel growth = growth_model_of(scenario.stand);
  const auto computed = [&](const MeasuredStand& stand) {
    return growth.live_crown_ratio(stand.at, stand.trees, stand.basal_area);
  };
  const double measured = computed(*scenario.stand.standing) + 0.05;
  scenario.stand.standing->live_crown_ratio = measured;
  const MeasuredStand later = grown(scenario, 6);
  CHECK(*later.live_crown_ratio - computed(later) == Approx(0.05).epsilon(support::two_methods));
  scenario.stand.standing->live_crown_ratio = 0.01;
  CHECK(*grown(scenario, 30).live_crown_ratio == 0.0);
  scenario.stand.standing->live_crown_ratio.reset();
  CHECK_FALSE(grown(scenario, 6).live_crown_ratio);
}

TEST_CASE("on a yield table trees follow its mortality and the deviation its own recovery") {
  Scenario scenario = table_by_hand();
  scenario.stand.standing = standing_by_hand().stand.standing;
  scenario.stand.standing->at = age(20);
  scenario.stand.standing->trees = trees_per_acre(450);
  scenario.stand.standing->basal_area = square_feet_per_acre(145 * 0.8);
  const MeasuredStand later = grown(scenario, 10);
  // Rows of the table: 450 trees and 145 ft2 at 20, 350 and 168 at 30.
  CHECK(later.trees.in(trees_per_acre) == relative(350, round_off));
  CHECK(later.basal_area.in(square_feet_per_acre) ==
        relative(168 * (1 - 0.2 * std::exp(-0.09 * 10)), round_off));
}

TEST_CASE("growth needs to know its site and tables of regimes do not recover") {
  Scenario scenario = scenario_tests::bare_land_by_hand();
  scenario.stand.site_index.reset();
  CHECK_THROWS_AS(growth_model_of(scenario.stand), ContractViolation);
  CHECK_THROWS_AS(recovery_per_yr(std::vector<TabledRegime>{}), ContractViolation);
}

}  // namespace
}  // namespace staddle
