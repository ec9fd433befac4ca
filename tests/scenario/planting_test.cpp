// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/scenario/planting.h"

#include <catch2/catch.hpp>

#include "scenario/scenario_by_hand.h"
#include "staddle/optimise/solve.h"
#include "staddle/plant/compare.h"
#include "staddle/scenario/advise_problem.h"
#include "staddle/scenario/plant_question.h"
#include "staddle/scenario/problems.h"
#include "staddle/scenario/vary_question.h"
#include "staddle/vary/vary.h"
#include "support/near.h"

namespace staddle {
namespace {

using scenario_tests::bare_land_by_hand;
using scenario_tests::standing_by_hand;
using scenario_tests::table_by_hand;

Establishment one_way() {
  EstablishmentAlternative way;
  way.name = "sprayed";
  way.methods = {SiteMethod::chemical};
  way.practices = {{"spray", age(0), dollars_per_acre(90)},
                   {"seedlings", age(0), dollars_per_acre(120)},
                   {"release", age(3), dollars_per_acre(80)}};
  way.planted = trees_per_acre(500);
  way.site_index_shift = feet(3);
  way.response.years_gained = 2;
  return {{way}, std::nullopt};
}

Establishment in_use() {
  Establishment establishment = one_way();
  establishment.use = 0;
  return establishment;
}

// The same by the keys that every scenario has, years gained apart.
Scenario written_out(Scenario scenario) {
  scenario.stand.planted = trees_per_acre(500);
  scenario.costs.establishment = dollars_per_acre(210);
  scenario.costs.practices = {{"release", age(3), dollars_per_acre(80)}};
  return scenario;
}

double best_of(const StandProblem& problem) {
  return solve(problem).best.value.objective.in(dollars_per_acre);
}

}  // namespace

TEST_CASE("without one in use the scenario plants as it says") {
  Scenario scenario = bare_land_by_hand();
  scenario.establishment = one_way();
  const Planting planting = planting_of(scenario);
  CHECK(planting.planted == trees_per_acre(600));
  CHECK(planting.establishment == dollars_per_acre(350));
  CHECK(planting.response == EstablishmentResponse{});
  CHECK(best_of(make_problems(scenario).stand) ==
        best_of(make_problems(bare_land_by_hand()).stand));
}

TEST_CASE("the alternative in use replaces trees and costs and practices on bare land") {
  Scenario scenario = bare_land_by_hand();
  scenario.costs.practices = {{"burn", age(15), dollars_per_acre(30)}};
  scenario.establishment = in_use();
  scenario.establishment->alternatives[0].response = {};
  scenario.establishment->alternatives[0].site_index_shift = feet(0);
  CHECK(best_of(make_problems(scenario).stand) ==
        best_of(make_problems(written_out(bare_land_by_hand())).stand));
}

TEST_CASE("whoever reads trees and costs of a scenario sees those of the alternative in use") {
  for (const bool standing : {false, true}) {
    Scenario scenario = standing ? standing_by_hand() : bare_land_by_hand();
    scenario.costs.practices = {{"burn", age(15), dollars_per_acre(30)}};
    scenario.establishment = in_use();
    const double before = best_of(make_problems(scenario).stand);
    take_alternative_in_use(scenario);
    take_alternative_in_use(scenario);
    CHECK(scenario.stand.planted == trees_per_acre(500));
    CHECK(scenario.costs.establishment == dollars_per_acre(210));
    CHECK(scenario.costs.practices.at(0).what == (standing ? "burn" : "release"));
    CHECK(best_of(make_problems(scenario).stand) == before);
    const Planting stated = planting_by(scenario, nullptr);
    CHECK(stated.planted == trees_per_acre(600));
    CHECK(stated.establishment == dollars_per_acre(350));
    CHECK(stated.practices.at(0).what == "burn");
  }
}

TEST_CASE("a shift of the site is another site index") {
  Scenario scenario = bare_land_by_hand();
  scenario.establishment = in_use();
  scenario.establishment->alternatives[0].response = {};
  Scenario better = written_out(bare_land_by_hand());
  better.stand.site_index = feet(73);
  CHECK(best_of(make_problems(scenario).stand) == best_of(make_problems(better).stand));
  CHECK(make_advise_problem(scenario)->site_index == feet(73));
}

TEST_CASE("a successor begins by the alternative in use and the standing stand stays as it is") {
  Scenario scenario = standing_by_hand();
  scenario.costs.practices = {{"burn", age(20), dollars_per_acre(30)}};
  const ScenarioProblems plain = make_problems(scenario);
  scenario.establishment = in_use();
  const ScenarioProblems used = make_problems(scenario);
  Scenario bare = bare_land_by_hand();
  bare.establishment = in_use();
  REQUIRE(used.successor);
  CHECK(best_of(*used.successor) == best_of(make_problems(bare).stand));
  CHECK(best_of(*used.successor) != best_of(*plain.successor));
  CHECK(best_of(used.stand) == best_of(plain.stand));
  CHECK(used.stand.stand_case.costs.practices.size() == 1);
  CHECK(make_advise_problem(scenario)->site_index == feet(70));
}

TEST_CASE("the comparison finds what advise finds of its only alternative in use") {
  for (const bool standing : {false, true}) {
    Scenario scenario = standing ? standing_by_hand() : bare_land_by_hand();
    scenario.establishment = in_use();
    scenario.ready_limits = default_ready_limits();
    const PlantSolution solution = compare_establishments(make_plant_problem(scenario));
    REQUIRE(solution.ranking.size() == 1);
    const PricedRegime& best = *solution.alternatives[0].best;
    const Advice advice = staddle::advise(make_advise_problem(scenario).value()).value();
    const MoneyPerAcre lev =
        standing ? advice.successor_lev.value() : advice.best_plan.land_expectation_value;
    CHECK(best.value.objective == lev);
    if (!standing) CHECK(best.regime.final_harvest == advice.best_plan.regime.final_harvest);
    CHECK(solution.as_stated->value.objective != best.value.objective);
  }
}

TEST_CASE("varying site and trees keeps what the alternative in use gains") {
  Scenario scenario = bare_land_by_hand();
  scenario.establishment = in_use();
  VaryQuestion question;
  question.rates = {scenario.costs.rate};
  const std::vector<Parameter> known = parameters_of({"sawtimber", "chip_n_saw", "pulpwood"});
  for (const Parameter& parameter : known) {
    if (parameter.kind == Parameter::Kind::site_index) {
      question.one_at_a_time.push_back({parameter, 65, 70});
    } else if (parameter.kind == Parameter::Kind::planted) {
      question.one_at_a_time.push_back({parameter, 500, 700});
    }
  }
  REQUIRE(question.one_at_a_time.size() == 2);
  scenario.vary = question;
  const VarySolution solution = vary(make_vary_problem(scenario)).value();
  const double today = best_of(make_problems(scenario).stand);
  CHECK(solution.base.value()->in(dollars_per_acre) == support::relative(today, 1e-12));
  for (const OneAtATime& row : solution.one_at_a_time) {
    const bool by_site = row.span.parameter.kind == Parameter::Kind::site_index;
    Scenario other = scenario;
    if (by_site) other.stand.site_index = feet(65);
    if (!by_site) other.establishment->alternatives[0].planted = trees_per_acre(700);
    const std::size_t changed = by_site ? 0 : 1;
    CHECK(row.reoptimised[1 - changed].value()->in(dollars_per_acre) ==
          support::relative(today, 1e-12));
    CHECK(row.reoptimised[changed].value()->in(dollars_per_acre) ==
          support::relative(best_of(make_problems(other).stand), 1e-12));
  }
}

TEST_CASE("on a yield table ways differ by what they cost alone") {
  Scenario scenario = table_by_hand();
  Establishment establishment = one_way();
  EstablishmentAlternative& way = establishment.alternatives[0];
  way.planted.reset();
  way.site_index_shift = feet(0);
  way.response = {};
  scenario.establishment = establishment;
  const PlantSolution solution = compare_establishments(make_plant_problem(scenario));
  REQUIRE(solution.ranking.size() == 1);
  REQUIRE(solution.as_stated);
  CHECK(solution.alternatives[0].best->value.objective > solution.as_stated->value.objective);
  CHECK(solution.alternatives[0].break_even->reason.find("yield table") != std::string::npos);
}

}  // namespace staddle
