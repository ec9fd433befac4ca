// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/money.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "published/stand_fixture.h"
#include "staddle/finance/valuation.h"
#include "staddle/regime/simulate.h"
#include "support/near.h"

// Money of the evaluator, checked against sums that are written a second time here.
namespace staddle {
namespace {

using published::bare_land;
using published::equations;
using support::relative;
using support::round_off;
using support::usd;

Peril total_loss(double probability) {
  Peril peril;
  peril.name = "total loss";
  peril.annual_probability = probability;
  peril.constant_share = 0.6;
  peril.salvage_share = 0.25;
  peril.cleanup = dollars_per_acre(120);
  return peril;
}

StandCase rich_bare_land() {
  StandCase stand = bare_land(equations("loblolly-planted-coastal"), 70, 600);
  stand.costs.annual_income = dollars_per_acre(3);
  stand.costs.regeneration_delay_yr = 2;
  stand.costs.sale_fee_fraction = 0.07;
  stand.costs.harvest_tax_fraction = 0.02;
  stand.costs.thinning_sale_cost = dollars_per_acre(15);
  stand.costs.final_sale_cost = dollars_per_acre(25);
  stand.costs.practices = {{"site burn", age(0), dollars_per_acre(40)},
                           {"release spray", age(2), dollars_per_acre(65)},
                           {"understory burn", age(40), dollars_per_acre(30)}};
  stand.costs.flows = {
      {"pine straw", age(9), DatedFlow::Until::first_thinning, age(0), dollars_per_acre(60)},
      {"lease", age(0), DatedFlow::Until::final_harvest, age(0), dollars_per_acre(5)},
      {"programme", age(5), DatedFlow::Until::age, age(8), dollars_per_acre(-4)}};
  return stand;
}

StandCase rich_standing_stand() {
  StandCase stand = rich_bare_land();
  MeasuredStand measured;
  measured.at = age(17);
  measured.trees = trees_per_acre(480);
  measured.basal_area = square_feet_per_acre(132);
  measured.live_crown_ratio = 0.36;
  measured.other_timber = {{"hardwood pulpwood", tons_per_acre(8), 0.02, dollars_per_ton(6)}};
  stand.standing = measured;
  stand.land_value = dollars_per_acre(410);
  return stand;
}

const Regime two_thinnings{{{age(18), 0.3}, {age(24), 0.25}}, age(33)};

double discounted_lines(const StandCase& stand, const RegimeReport& report) {
  double sum = 0;
  for (const CashFlowLine& line : report.cash_flow) {
    sum += usd(line.amount) *
           std::pow(1 + stand.costs.rate.per_year(), -(line.at - stand.present()).in(years));
  }
  return sum;
}

TEST_CASE("the cash flow lines discounted to the present are the net present value") {
  for (const bool storms : {false, true}) {
    for (StandCase stand : {rich_bare_land(), rich_standing_stand()}) {
      if (storms) stand.hazard.perils = {total_loss(0.03)};
      const RegimeReport report = simulate(stand, stated("two", two_thinnings)).value();
      CHECK(discounted_lines(stand, report) ==
            relative(usd(report.value.net_present_value), round_off));
    }
  }
}

TEST_CASE("telling a regime and pricing it fast give the same bits") {
  for (const StandCase& stand : {rich_bare_land(), rich_standing_stand()}) {
    const RegimeValue fast = evaluate(stand, two_thinnings);
    const RegimeReport told = simulate(stand, stated("two", two_thinnings)).value();
    CHECK(usd(fast.objective) == usd(told.value.objective));
    CHECK(usd(fast.net_present_value) == usd(told.value.net_present_value));
    CHECK(fast.land_weight == told.value.land_weight);
  }
}

TEST_CASE("land expectation value equals the worth of 400 rotations one after another") {
  const StandCase stand = rich_bare_land();
  const RegimeReport report = simulate(stand, stated("two", two_thinnings)).value();
  const double period = 33 + 2;
  double chain = 0;
  for (int rotation = 0; rotation < 400; ++rotation) {
    chain += std::pow(1.05, -period * rotation) * usd(report.value.net_present_value);
  }
  CHECK(usd(report.value.objective) == support::within(chain, 1e-6));
}

TEST_CASE("straw ends with the first thinning and that year is still included") {
  const StandCase stand = rich_bare_land();
  const RegimeReport report = simulate(stand, stated("two", two_thinnings)).value();
  int first = 99, last = 0;
  for (const CashFlowLine& line : report.cash_flow) {
    if (line.what != "pine straw") continue;
    first = std::min(first, line.at.whole());
    last = std::max(last, line.at.whole());
  }
  CHECK(first == 9);
  CHECK(last == 18);
}

TEST_CASE("a lease from age 0 is first paid at the end of year 1 and not while the land is bare") {
  const RegimeReport report = simulate(rich_bare_land(), stated("two", two_thinnings)).value();
  int lease_years = 0;
  for (const CashFlowLine& line : report.cash_flow) {
    if (line.what == "lease") ++lease_years;
  }
  CHECK(lease_years == 33);
}

TEST_CASE("a practice after the final harvest costs nothing and one at planting is paid at once") {
  const RegimeReport report = simulate(rich_bare_land(), stated("two", two_thinnings)).value();
  bool at_planting = false;
  for (const CashFlowLine& line : report.cash_flow) {
    CHECK(line.what != "understory burn");
    if (line.what == "site burn") at_planting = line.at == age(0);
  }
  CHECK(at_planting);
}

TEST_CASE("a standing stand owes nothing for its past and its present year") {
  const RegimeReport report = simulate(rich_standing_stand(), stated("two", two_thinnings)).value();
  for (const CashFlowLine& line : report.cash_flow) {
    CHECK(line.what != "establishment");
    CHECK(line.what != "release spray");
    if (line.what == "annual cost") CHECK(line.at > age(17));
  }
}

TEST_CASE("tons sold and tons left are the tons that stood of each product") {
  const StandCase stand = rich_standing_stand();
  const RegimeReport report = simulate(stand, stated("two", two_thinnings)).value();
  for (const ThinningRecord& thinning : report.thinnings) {
    const std::vector<Yield> left = stand.assortment.tons(
        stand.growth, thinning.at, thinning.after.trees, thinning.after.basal_area);
    for (const YearRecord& year : report.years) {
      if (year.at != thinning.at) continue;
      for (std::size_t i = 0; i < left.size(); ++i) {
        CHECK((left[i] + thinning.tons[i]).in(tons_per_acre) ==
              support::within(year.tons[i].in(tons_per_acre), 1e-9));
      }
    }
  }
}

TEST_CASE("doubling every price and cost doubles the land expectation value") {
  const StandCase once = rich_bare_land();
  StandCase twice = once;
  for (ProductPrice& price : twice.prices) price.stumpage = price.stumpage * 2;
  Costs& costs = twice.costs;
  for (MoneyPerAcre* money : {&costs.establishment, &costs.thinning_sale_cost,
                              &costs.final_sale_cost, &costs.annual_cost, &costs.annual_income}) {
    *money = *money * 2;
  }
  for (Practice& practice : costs.practices) practice.cost = practice.cost * 2;
  for (DatedFlow& flow : costs.flows) flow.per_year = flow.per_year * 2;
  CHECK(usd(evaluate(twice, two_thinnings).objective) ==
        relative(2 * usd(evaluate(once, two_thinnings).objective), round_off));
}

TEST_CASE("a growth multiplier of one changes no bit and of bare land scales the revenue") {
  StandCase stand = rich_bare_land();
  stand.costs.thinning_sale_cost = stand.costs.final_sale_cost = dollars_per_acre(0);
  const RegimeReport plain = simulate(stand, stated("two", two_thinnings)).value();
  StandCase same = stand;
  same.growth_multiplier = 1.0;
  CHECK(usd(evaluate(same, two_thinnings).objective) == usd(plain.value.objective));
  stand.growth_multiplier = 1.15;
  const RegimeReport more = simulate(stand, stated("two", two_thinnings)).value();
  CHECK(usd(more.final_harvest.revenue) ==
        relative(1.15 * usd(plain.final_harvest.revenue), round_off));
}

TEST_CASE("a growth multiplier on a standing stand changes growth and not what stands today") {
  StandCase stand = rich_standing_stand();
  const RegimeReport plain = simulate(stand, stated("two", two_thinnings)).value();
  stand.growth_multiplier = 1.15;
  const RegimeReport more = simulate(stand, stated("two", two_thinnings)).value();
  const auto tons = [](const RegimeReport& report, std::size_t year, std::size_t product) {
    return report.years[year].tons[product].in(tons_per_acre);
  };
  for (std::size_t product = 0; product < 3; ++product) {
    CHECK(tons(more, 0, product) == tons(plain, 0, product));
    CHECK(tons(more, 1, product) - tons(more, 0, product) ==
          support::within(1.15 * (tons(plain, 1, product) - tons(plain, 0, product)), 1e-9));
  }
}

}  // namespace
}  // namespace staddle
