// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/scenario/problems.h"

#include <catch2/catch.hpp>

#include "scenario/scenario_by_hand.h"
#include "support/near.h"

namespace staddle {
namespace {

using scenario_tests::bare_land_by_hand;
using scenario_tests::standing_by_hand;
using scenario_tests::table_by_hand;
using Kind = AfterHarvest::Kind;

Scenario standing_at(int years_old) {
  Scenario scenario = standing_by_hand();
  scenario.stand.standing->at = age(years_old);
  return scenario;
}

TEST_CASE("bare land is one problem with the windows as asked") {
  const ScenarioProblems problems = make_problems(bare_land_by_hand());
  CHECK_FALSE(problems.successor);
  CHECK_FALSE(problems.stand.stand_case.standing);
  CHECK(problems.stand.acres == acres(40));
  CHECK(problems.stand.lattice.thinning_from == age(12));
  CHECK(problems.stand.lattice.final_to == age(45));
  CHECK(problems.stand.stand_case.prices.size() == 3);
  CHECK(problems.stand.stand_case.growth_multiplier == 1.0);
  CHECK(problems.stand.stand_case.growth.dominant_height(age(25)).in(feet) ==
        support::relative(70, support::round_off));
}

TEST_CASE("a standing stand has a successor on bare land with the windows as asked") {
  const ScenarioProblems problems = make_problems(standing_at(25));
  REQUIRE(problems.successor);
  CHECK_FALSE(problems.successor->stand_case.standing);
  CHECK(problems.successor->lattice.final_from == age(20));
  CHECK(problems.successor->lattice.thinning_from == age(12));
  REQUIRE(problems.stand.stand_case.standing);
  CHECK(problems.stand.stand_case.present() == age(25));
  CHECK(problems.stand.lattice.final_from == age(25));
  CHECK(problems.stand.lattice.final_to == age(45));
  CHECK(problems.stand.lattice.thinning_from == age(25));
  CHECK(problems.stand.stand_case.land_value == MoneyPerAcre());
}

TEST_CASE("final ages begin at the larger of the lower limit and the present") {
  CHECK(make_problems(standing_at(19)).stand.lattice.final_from == age(20));
  CHECK(make_problems(standing_at(20)).stand.lattice.final_from == age(20));
  CHECK(make_problems(standing_at(21)).stand.lattice.final_from == age(21));
}

TEST_CASE("a stand at the upper limit is within it and an older one can only be cut now") {
  const DecisionLattice last = make_problems(standing_at(45)).stand.lattice;
  CHECK(last.final_from == age(45));
  CHECK(last.final_to == age(45));
  const DecisionLattice past = make_problems(standing_at(46)).stand.lattice;
  CHECK(past.final_from == age(46));
  CHECK(past.final_to == age(46));
  CHECK(make_problems(standing_at(46)).successor->lattice.final_to == age(45));
}

TEST_CASE("an empty window of a table stays empty and is no fault of the scenario") {
  Scenario scenario = table_by_hand();
  scenario.lattice.final_from = age(45);
  scenario.lattice.final_to = age(40);
  const DecisionLattice lattice = make_problems(scenario).stand.lattice;
  CHECK(lattice.final_from > lattice.final_to);
}

TEST_CASE("without planting there is no successor and a land price stands in its place") {
  Scenario scenario = standing_by_hand();
  scenario.stand.planted.reset();
  scenario.after_harvest = {Kind::land_price, dollars_per_acre(1200)};
  const ScenarioProblems problems = make_problems(scenario);
  CHECK_FALSE(problems.successor);
  CHECK(problems.stand.stand_case.land_value == dollars_per_acre(1200));
}

TEST_CASE("a yield table plants its successor by itself") {
  Scenario scenario = table_by_hand();
  scenario.stand.standing = standing_by_hand().stand.standing;
  const ScenarioProblems problems = make_problems(scenario);
  REQUIRE(problems.successor);
  CHECK(problems.stand.stand_case.growth.first_age() == age(10));
  CHECK(problems.stand.stand_case.assortment.product_names() ==
        std::vector<std::string>{"logs", "pulp"});
}

TEST_CASE("tables of fixed regimes are no problem of one stand") {
  Scenario scenario = bare_land_by_hand();
  scenario.stand.source = std::vector<TabledRegime>{};
  CHECK_THROWS_AS(make_problems(scenario), ContractViolation);
}

TEST_CASE(
    "the land after the harvest is worth its successor or nothing less than zero or its price") {
  const MoneyPerAcre loss = dollars_per_acre(-150);
  const MoneyPerAcre gain = dollars_per_acre(480);
  CHECK(land_value_after({Kind::replant, {}}, loss) == loss);
  CHECK(land_value_after({Kind::replant, {}}, gain) == gain);
  CHECK(land_value_after({Kind::best, {}}, loss) == MoneyPerAcre());
  CHECK(land_value_after({Kind::best, {}}, gain) == gain);
  CHECK(land_value_after({Kind::land_price, dollars_per_acre(900)}, gain) == dollars_per_acre(900));
}

}  // namespace
}  // namespace staddle
