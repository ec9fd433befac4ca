// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/hold/ledger.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "staddle/base/contract.h"
#include "staddle/regime/after_tax.h"
#include "staddle/regime/simulate.h"
#include "support/loblolly_equations.h"
#include "support/money.h"
#include "support/near.h"

namespace staddle {
namespace {

using support::relative;
using support::round_off;
using support::usd;
using support::within;

// A coastal stand of 17 years, site 70, prices 25/18/7, five percent.
StandProblem standing_problem() {
  const EquationSet equations = support::coastal_loblolly();
  Costs costs;
  costs.rate = DiscountRate::real(0.05);
  costs.establishment = dollars_per_acre(350);
  costs.annual_cost = dollars_per_acre(8);
  StandProblem problem{
      {GrowthModel::from_equations(equations, feet(70), trees_per_acre(600)),
       Assortment::from_equations(equations, default_products()),
       {{dollars_per_ton(25), 1.0, {}, {}},
        {dollars_per_ton(18), 1.0, {}, {}},
        {dollars_per_ton(7), 1.0, {}, {}}},
       costs,
       Hazard{},
       MeasuredStand{age(17), trees_per_acre(480), square_feet_per_acre(132), 0.42, {}, {}}},
      {},
      acres(1)};
  problem.stand_case.land_value = dollars_per_acre(500);
  problem.lattice.removal_fractions = {0.25, 1.0 / 3.0};
  problem.lattice.thinning_from = problem.lattice.final_from = age(17);
  problem.lattice.final_from = age(20);
  problem.lattice.guards = default_guards();
  return problem;
}

const Peril breakage{"breakage", 0.05, std::nullopt, 0.4, 0.3, dollars_per_acre(80), false};

TEST_CASE("a ledger has a row for every age from the present to the last allowed") {
  const HoldAnswer answer = hold_or_cut(standing_problem());
  REQUIRE(answer.ledger.years.size() == 29);
  for (std::size_t i = 0; i < answer.ledger.years.size(); ++i) {
    CHECK(answer.ledger.years[i].at == age(17 + static_cast<double>(i)));
  }
}

TEST_CASE("each year's forest value is that of the regime that sells then") {
  StandProblem problem = standing_problem();
  SECTION("without storms") {}
  SECTION("with storms") { problem.stand_case.hazard.perils = {breakage}; }
  for (const LedgerRow& row : hold_or_cut(problem).ledger.years) {
    CAPTURE(row.at);
    const RegimeValue value = evaluate(problem.stand_case, {{}, row.at});
    CHECK(usd(row.forest_value_if_cut) == relative(usd(value.objective), round_off));
  }
}

TEST_CASE("after the best thinning too each year is worth what its regime is worth") {
  StandProblem problem = standing_problem();
  SECTION("without storms") {}
  SECTION("with storms") { problem.stand_case.hazard.perils = {breakage}; }
  const HoldAnswer answer = hold_or_cut(problem);
  REQUIRE(answer.after_best_thinning);
  const Ledger& ledger = answer.after_best_thinning->ledger;
  const Thinning thinning = answer.after_best_thinning->thinning;
  REQUIRE(ledger.years.size() > 5);
  CHECK(ledger.years.front().at == thinning.at);
  for (std::size_t i = 1; i < ledger.years.size(); ++i) {
    const RegimeValue value = evaluate(problem.stand_case, {{thinning}, ledger.years[i].at});
    CHECK(usd(ledger.years[i].forest_value_if_cut) == relative(usd(value.objective), round_off));
  }
}

TEST_CASE("the stand matures at the age of the highest forest value") {
  const HoldAnswer answer = hold_or_cut(standing_problem());
  int best_rows = 0;
  for (const LedgerRow& row : answer.ledger.years) {
    CHECK(usd(row.loss_against_best) >= 0.0);
    if (usd(row.loss_against_best) != 0.0) continue;
    ++best_rows;
    CHECK(row.at == answer.ledger.matures_at);
  }
  CHECK(best_rows == 1);
}

TEST_CASE("growth by volume and by step up is all that the value gains") {
  StandProblem problem = standing_problem();
  problem.stand_case.costs.sale_fee_fraction = 0.08;
  problem.stand_case.costs.final_sale_cost = dollars_per_acre(12);
  problem.stand_case.standing->other_timber = {
      {"hardwood", tons_per_acre(8), 0.02, dollars_per_ton(6)}};
  const Ledger ledger = hold_or_cut(problem).ledger;
  for (std::size_t i = 0; i + 1 < ledger.years.size(); ++i) {
    const LedgerRow& row = ledger.years[i];
    REQUIRE(row.growth);
    CHECK(usd(row.growth->volume) + usd(row.growth->step_up) ==
          within(usd(ledger.years[i + 1].stumpage) - usd(row.stumpage), 1e-9));
  }
}

TEST_CASE("one price for every product leaves no growth by step up") {
  StandProblem problem = standing_problem();
  for (ProductPrice& price : problem.stand_case.prices) price.stumpage = dollars_per_ton(20);
  for (const LedgerRow& row : hold_or_cut(problem).ledger.years) {
    CHECK(usd(row.growth->step_up) == within(0, 1e-9));
    CHECK(usd(row.growth->volume) > 0);
  }
}

TEST_CASE("growth beats what is required in just those years that raise the forest value") {
  StandProblem problem = standing_problem();
  problem.stand_case.costs.final_sale_cost = dollars_per_acre(12);
  problem.stand_case.costs.practices = {{"burn", age(22), dollars_per_acre(40)}};
  problem.stand_case.costs.flows = {
      {"straw", age(18), DatedFlow::Until::age, age(25), dollars_per_acre(60)}};
  const Ledger ledger = hold_or_cut(problem).ledger;
  const double v = 1 / 1.05;
  for (std::size_t i = 0; i + 1 < ledger.years.size(); ++i) {
    const LedgerRow& row = ledger.years[i];
    CAPTURE(row.at);
    REQUIRE((row.value_growth && row.required));
    // Discounted to the present, a year of waiting adds what it grows beyond the cost of
    // waiting: v^(t+1) V (growth - required).
    const double added = usd(ledger.years[i + 1].forest_value_if_cut - row.forest_value_if_cut);
    CHECK(added == within(std::pow(v, static_cast<double>(i) + 1) * usd(row.stumpage) *
                              (*row.value_growth - *row.required),
                          1e-8));
  }
}

TEST_CASE("after tax each year is worth what its regime is worth after tax") {
  StandProblem problem = standing_problem();
  TaxRules rules;
  rules.basis = dollars_per_acre(300);
  SECTION("without storms") {}
  SECTION("with storms") { problem.stand_case.hazard.perils = {breakage}; }
  SECTION("over stated tons") { rules.basis_tons = tons_per_acre(120); }
  const HoldAnswer before = hold_or_cut(problem);
  const HoldAnswer after = hold_after_tax(problem, before, rules, dollars_per_acre(420));
  const AfterTax tax(problem.stand_case, rules, problem.acres, dollars_per_acre(420));
  REQUIRE(after.ledger.years.size() == before.ledger.years.size());
  for (const LedgerRow& row : after.ledger.years) {
    CHECK(usd(row.forest_value_if_cut) == relative(usd(tax.value({{}, row.at}).objective), 1e-9));
  }
  REQUIRE(after.after_best_thinning);
  const Thinning thinning = after.after_best_thinning->thinning;
  const std::vector<LedgerRow>& years = after.after_best_thinning->ledger.years;
  for (std::size_t i = 1; i < years.size(); ++i) {
    CHECK(usd(years[i].forest_value_if_cut) ==
          relative(usd(tax.value({{thinning}, years[i].at}).objective), 1e-9));
  }
}

TEST_CASE("a sale now leaves what it brings less tax on what exceeds the basis") {
  const StandProblem problem = standing_problem();
  TaxRules rules;
  rules.basis = dollars_per_acre(300);
  const HoldAnswer before = hold_or_cut(problem);
  const HoldAnswer after = hold_after_tax(problem, before, rules, problem.stand_case.land_value);
  const double value = usd(before.ledger.years.front().stumpage);
  CHECK(usd(after.ledger.years.front().stumpage) == within(value - 0.15 * (value - 300), 1e-9));
}

TEST_CASE("a dear use of the land makes the stand mature no later") {
  StandProblem problem = standing_problem();
  Age before = age(200);
  for (const double land : {0.0, 500.0, 1500.0, 4000.0, 20000.0}) {
    problem.stand_case.land_value = dollars_per_acre(land);
    const Age matures = hold_or_cut(problem).ledger.matures_at;
    CHECK(matures <= before);
    before = matures;
  }
  CHECK(before == age(17));
}

TEST_CASE("waiting three years gains what the value gains less what those years cost") {
  const HoldAnswer answer = hold_or_cut(standing_problem());
  REQUIRE(answer.waiting);
  CHECK(answer.waiting->years == 3);
  const double now = usd(answer.ledger.years[0].stumpage);
  const double then = usd(answer.ledger.years[3].stumpage);
  CHECK(usd(answer.waiting->gain) == within(then - now - 3 * 8, 1e-9));
  REQUIRE(answer.waiting->growth_per_yr);
  CHECK(now * std::pow(1 + *answer.waiting->growth_per_yr, 3) ==
        relative(now + usd(answer.waiting->gain), round_off));
  CHECK(usd(answer.waiting->gain_today) ==
        within(usd(answer.ledger.years[3].forest_value_if_cut) -
                   usd(answer.ledger.years[0].forest_value_if_cut),
               1e-9));
}

TEST_CASE("a stand beyond the last age has one row and nothing to wait for") {
  StandProblem problem = standing_problem();
  problem.lattice.final_from = problem.lattice.final_to = age(17);
  const HoldAnswer answer = hold_or_cut(problem);
  CHECK(answer.ledger.years.size() == 1);
  CHECK(answer.ledger.matures_at == age(17));
  CHECK_FALSE(answer.waiting);
}

TEST_CASE("a lattice without thinnings has no ledger after one") {
  StandProblem problem = standing_problem();
  problem.lattice.max_thinnings = 0;
  CHECK_FALSE(hold_or_cut(problem).after_best_thinning);
}

TEST_CASE("timber without a price has no rate of growth") {
  StandProblem problem = standing_problem();
  for (ProductPrice& price : problem.stand_case.prices) price.stumpage = dollars_per_ton(0);
  for (const LedgerRow& row : hold_or_cut(problem).ledger.years) {
    CHECK_FALSE(row.value_growth);
    CHECK_FALSE(row.required);
  }
}

TEST_CASE("bare land cannot be asked whether to hold it") {
  StandProblem problem = standing_problem();
  problem.stand_case.standing.reset();
  CHECK_THROWS_AS(hold_or_cut(problem), ContractViolation);
}

}  // namespace
}  // namespace staddle
