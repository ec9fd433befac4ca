// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/regime/after_tax.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <vector>

#include "published/stand_fixture.h"
#include "staddle/finance/valuation.h"
#include "support/money.h"
#include "support/near.h"

namespace staddle {
namespace {

using support::relative;
using support::round_off;
using support::usd;
using support::within;

StandCase bare() {
  StandCase stand = published::bare_land(published::equations("loblolly-planted-coastal"), 70, 600);
  stand.costs.sale_fee_fraction = 0.08;
  stand.costs.final_sale_cost = dollars_per_acre(10);
  stand.costs.practices = {{"release", age(2), dollars_per_acre(65)}};
  stand.costs.flows = {{"lease", age(5), DatedFlow::Until::final_harvest, {}, dollars_per_acre(4)}};
  return stand;
}

StandCase standing() {
  StandCase stand = bare();
  stand.standing =
      MeasuredStand{age(17), trees_per_acre(480), square_feet_per_acre(132), 0.4, std::nullopt, {}};
  stand.land_value = dollars_per_acre(500);
  return stand;
}

TaxRules no_tax() {
  TaxRules rules;
  rules.long_term_rate = rules.ordinary_rate = 0.0;
  return rules;
}

const Regime thinned{{{age(18), 0.3}, {age(24), 0.3}}, age(33)};

TEST_CASE("rates of nothing change nothing") {
  TaxRules rules = no_tax();
  rules.basis = dollars_per_acre(300);
  for (const StandCase& stand : {bare(), standing()}) {
    const RegimeValue before = evaluate(stand, thinned);
    const RegimeValue after = AfterTax(stand, rules, acres(40), stand.land_value).value(thinned);
    CHECK(usd(after.net_present_value) == relative(usd(before.net_present_value), round_off));
    CHECK(usd(after.objective) == relative(usd(before.objective), round_off));
  }
}

TEST_CASE("one rate on all that is earned and deducted at once takes that share of the value") {
  TaxRules rules;
  rules.long_term_rate = rules.ordinary_rate = 0.2;
  // Twenty acres at 350 stay below the limit: planting is deducted in full at once.
  const RegimeValue before = evaluate(bare(), thinned);
  const RegimeValue after = AfterTax(bare(), rules, acres(20)).value(thinned);
  CHECK(usd(after.objective) == relative(0.8 * usd(before.objective), 1e-9));
}

TEST_CASE("a basis saves its tax in nominal money as it is used up") {
  TaxRules rules;
  rules.ordinary_rate = 0.0;
  rules.long_term_rate = 0.15;
  rules.inflation = 0.02;
  const StandCase stand = standing();
  const RegimeReport before = simulate(stand, stated("", thinned)).value();
  const double without =
      usd(AfterTax(stand, rules, acres(40), stand.land_value).value(thinned).net_present_value);
  rules.basis = dollars_per_acre(400);
  rules.basis_tons = tons_per_acre(90);
  const double with =
      usd(AfterTax(stand, rules, acres(40), stand.land_value).value(thinned).net_present_value);
  const double shrink = 1 / (1.05 * 1.02);
  double left = 1.0;
  double expected = 0.0;
  for (const ThinningRecord& cut : before.thinnings) {
    double tons = 0.0;
    for (const Yield& yield : cut.tons) tons += yield.in(tons_per_acre);
    const double share = std::min(left, tons / 90);
    left -= share;
    expected += 0.15 * 400 * share * std::pow(shrink, (cut.at - age(17)).in(years));
  }
  REQUIRE(left > 0.0);
  expected += 0.15 * 400 * left * std::pow(shrink, 33 - 17);
  CHECK(with - without == relative(expected, 1e-9));
}

TEST_CASE("a basis without stated tons goes with the tons that stand now") {
  TaxRules rules;
  rules.basis = dollars_per_acre(400);
  const StandCase stand = standing();
  const std::vector<YearRecord> now = grow_unthinned(stand, age(17));
  const AfterTax unstated(stand, rules, acres(40), stand.land_value);
  for (const Yield& tons : now.front().tons) rules.basis_tons += tons;
  const AfterTax said(stand, rules, acres(40), stand.land_value);
  CHECK(usd(unstated.value(thinned).objective) ==
        relative(usd(said.value(thinned).objective), round_off));
}

TEST_CASE("where no timber stands yet each cut uses the share of the basis that it takes") {
  TaxRules rules;
  rules.reforestation_deduction = false;
  const AfterTax tax(bare(), rules, acres(20));
  const RegimeReport told = tax.report(stated("", thinned)).value();
  const double shrink = 1 / (1.05 * 1.02);
  const auto total = [](const std::vector<Yield>& tons) {
    double sum = 0.0;
    for (const Yield& yield : tons) sum += yield.in(tons_per_acre);
    return sum;
  };
  double left = 1.0;
  double expected = 0.0;
  for (const ThinningRecord& cut : told.thinnings) {
    const YearRecord& year = told.years[static_cast<std::size_t>(cut.at.whole())];
    const double used = left * total(cut.tons) / total(year.tons);
    left -= used;
    expected += 0.15 * 350 * used * std::pow(shrink, cut.at.in(years));
  }
  expected += 0.15 * 350 * left * std::pow(shrink, 33);
  CHECK(usd(tax.worth_of_basis(thinned)) == within(expected / (1 - told.value.land_weight), 1e-9));
}

TEST_CASE("what stands sells for its price less tax on what exceeds the basis that is left") {
  TaxRules rules;
  rules.basis = dollars_per_acre(400);
  rules.basis_tons = tons_per_acre(90);
  const StandCase stand = standing();
  const AfterTax tax(stand, rules, acres(40), stand.land_value);
  const RegimeReport before = simulate(stand, stated("", thinned)).value();
  const RegimeReport after = told_after_tax(before, tax);
  double left = 1.0;
  std::size_t cut = 0;
  for (std::size_t i = 0; i < before.years.size(); ++i) {
    const Age at = before.years[i].at;
    const double saves = 0.15 * 400 * std::pow(1.02, -static_cast<double>(i));
    CHECK(usd(after.years[i].stumpage_value) ==
          within(0.85 * usd(before.years[i].stumpage_value) + saves * left, 1e-9));
    if (cut == before.thinnings.size() || before.thinnings[cut].at != at) continue;
    double tons = 0.0;
    for (const Yield& yield : before.thinnings[cut].tons) tons += yield.in(tons_per_acre);
    left -= std::min(left, tons / 90);
    CHECK(usd(after.thinnings[cut].stumpage_left) ==
          within(0.85 * usd(before.thinnings[cut].stumpage_left) + saves * left, 1e-9));
    ++cut;
  }
  CHECK(cut == 2);
}

TEST_CASE("what a thinning leaves is worth what stood less what was cut at final prices") {
  const StandCase stand = standing();
  const RegimeReport told = simulate(stand, stated("", thinned)).value();
  for (const ThinningRecord& cut : told.thinnings) {
    const YearRecord& year = told.years[static_cast<std::size_t>(cut.at.whole() - 17)];
    double left = usd(year.stumpage_value);
    for (std::size_t i = 0; i < cut.tons.size(); ++i) {
      left -= usd(cut.tons[i] * stand.prices[i].stumpage);
    }
    CHECK(usd(cut.stumpage_left) == within(left, 1e-9));
  }
}

TEST_CASE("the report after tax adds up to its own value") {
  TaxRules rules;
  rules.basis = dollars_per_acre(250);
  const StandCase stand = standing();
  const AfterTax tax(stand, rules, acres(40), stand.land_value);
  const RegimeReport report = tax.report(stated("", thinned)).value();
  CashFlows flows;
  for (const CashFlowLine& line : report.cash_flow) {
    flows.push_back({line.at - age(17), line.amount, line.what});
  }
  CHECK(usd(net_present_value(flows, stand.costs.rate)) ==
        relative(usd(report.value.net_present_value), 1e-9));
  CHECK(usd(report.value.objective) == relative(usd(tax.value(thinned).objective), round_off));
}

TEST_CASE("selling all today keeps the proceeds less tax on what exceeds the basis") {
  TaxRules rules;
  rules.long_term_rate = 0.15;
  rules.basis = dollars_per_acre(300);
  StandCase stand = standing();
  stand.costs.regeneration_delay_yr = 0;
  const Regime now{{}, age(17)};
  const double before = usd(evaluate(stand, now).net_present_value);
  const double after =
      usd(AfterTax(stand, rules, acres(40), stand.land_value).value(now).net_present_value);
  CHECK(after == within(before - 0.15 * (before - 300), 1e-9));
}

TEST_CASE("planting that is not deducted comes back as basis") {
  TaxRules rules;
  rules.ordinary_rate = 0.22;
  const Regime plain{{}, age(30)};
  const double deducted = usd(AfterTax(bare(), rules, acres(20)).value(plain).objective);
  rules.reforestation_deduction = false;
  const AfterTax capital(bare(), rules, acres(20));
  CHECK(usd(capital.basis()) == 350);
  const double capitalised = usd(capital.value(plain).objective);
  CHECK(capitalised < deducted);
  const double back = 0.15 * 350 * std::pow(1.05 * 1.02, -30) - 0.22 * 350;
  CHECK(capitalised - deducted == within(back / (1 - std::pow(1.05, -31)), 1e-8));
}

TEST_CASE("more inflation makes a basis worth less and nothing else") {
  TaxRules rules;
  rules.basis = dollars_per_acre(300);
  const StandCase stand = standing();
  double before = 1e9;
  for (const double inflation : {0.0, 0.02, 0.10}) {
    rules.inflation = inflation;
    const double value =
        usd(AfterTax(stand, rules, acres(40), stand.land_value).value(thinned).objective);
    CHECK(value < before);
    before = value;
  }
}

TEST_CASE("with storms the money after tax still adds up") {
  TaxRules rules;
  rules.basis = dollars_per_acre(250);
  StandCase stand = standing();
  stand.hazard.perils = {{"wind", 0.03, std::nullopt, 0.5, 0.3, dollars_per_acre(100), true}};
  const AfterTax tax(stand, rules, acres(40), stand.land_value);
  const RegimeReport report = tax.report(stated("", thinned)).value();
  CashFlows flows;
  for (const CashFlowLine& line : report.cash_flow) {
    flows.push_back({line.at - age(17), line.amount, line.what});
  }
  CHECK(usd(net_present_value(flows, stand.costs.rate)) ==
        relative(usd(report.value.net_present_value), 1e-9));
}

}  // namespace
}  // namespace staddle
