// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/finance/valuation.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "staddle/base/contract.h"
#include "support/money.h"
#include "support/near.h"

namespace staddle {
namespace {

using support::relative;
using support::round_off;
using support::usd;
using support::within;

CashFlow pay(double year, double amount) {
  return {years(year), dollars_per_acre(amount), "payment"};
}

// A made-up rotation of 30 years with one thinning, and one year of delay.
CashFlows rotation() {
  CashFlows flows = {pay(0, -350), pay(15, 420), pay(30, 2650)};
  for (int year = 1; year <= 31; ++year) flows.push_back(pay(year, -4.5));
  return flows;
}

const DiscountRate five_percent = DiscountRate::real(0.05);

TEST_CASE("present value of no payments is nothing") {
  CHECK(usd(net_present_value({}, five_percent)) == 0.0);
  CHECK_FALSE(benefit_cost_ratio({}, five_percent).has_value());
}

TEST_CASE("present value of a level payment is the annuity formula") {
  CashFlows flows;
  for (int year = 1; year <= 40; ++year) flows.push_back(pay(year, 6.0));
  const double annuity = 6.0 * (1.0 - five_percent.discount_factor(years(40))) / 0.05;
  CHECK(usd(net_present_value(flows, five_percent)) == relative(annuity, round_off));
}

TEST_CASE("present value adds up over lists and scales with money") {
  const CashFlows one = rotation();
  CashFlows doubled = one;
  for (CashFlow& flow : doubled) flow.amount = 2.0 * flow.amount;
  CashFlows both = one;
  both.insert(both.end(), doubled.begin(), doubled.end());
  const double value = usd(net_present_value(one, five_percent));
  CHECK(usd(net_present_value(doubled, five_percent)) == 2.0 * value);
  CHECK(usd(net_present_value(both, five_percent)) == relative(3.0 * value, round_off));
}

TEST_CASE("land expectation value equals the present value of four hundred rotations") {
  CashFlows chain;
  for (int k = 0; k < 400; ++k) {
    for (CashFlow flow : rotation()) {
      flow.time += years(31.0 * k);
      chain.push_back(flow);
    }
  }
  const MoneyPerAcre npv = net_present_value(rotation(), five_percent);
  CHECK(usd(land_expectation_value(npv, years(31), five_percent)) ==
        within(usd(net_present_value(chain, five_percent)), 1e-6));
}

TEST_CASE("land expectation value doubles when all money doubles") {
  const MoneyPerAcre npv = net_present_value(rotation(), five_percent);
  CHECK(usd(land_expectation_value(2.0 * npv, years(31), five_percent)) ==
        2.0 * usd(land_expectation_value(npv, years(31), five_percent)));
}

TEST_CASE("equal annual equivalent paid over one rotation is worth that rotation") {
  const MoneyPerAcre npv = net_present_value(rotation(), five_percent);
  const MoneyPerAcre yearly =
      equal_annual_equivalent(land_expectation_value(npv, years(31), five_percent), five_percent);
  CashFlows flows;
  for (int year = 1; year <= 31; ++year) flows.push_back(pay(year, usd(yearly)));
  CHECK(usd(net_present_value(flows, five_percent)) == relative(usd(npv), round_off));
}

TEST_CASE("benefit cost ratio is one at an internal rate and above it where land pays") {
  const CashFlows flows = rotation();
  const InternalRates rates = internal_rates_of_return(flows);
  REQUIRE(rates.reported.has_value());
  CHECK(*benefit_cost_ratio(flows, *rates.reported) == relative(1.0, 1e-9));
  CHECK(*benefit_cost_ratio(flows, five_percent) > 1.0);
  CHECK(*benefit_cost_ratio({pay(0, -50), pay(1, 105)}, five_percent) == relative(2.0, round_off));
}

TEST_CASE("benefit cost ratio without costs is absent and without incomes is nothing") {
  CHECK_FALSE(benefit_cost_ratio({pay(3, 100)}, five_percent).has_value());
  CHECK(*benefit_cost_ratio({pay(3, -100)}, five_percent) == 0.0);
}

TEST_CASE("valuation refuses money and dates that are not finite") {
  CHECK_THROWS_AS(net_present_value({pay(1, std::nan(""))}, five_percent), ContractViolation);
  CHECK_THROWS_AS(net_present_value({pay(INFINITY, 1)}, five_percent), ContractViolation);
  CHECK_THROWS_AS(land_expectation_value(dollars_per_acre(std::nan("")), years(30), five_percent),
                  ContractViolation);
  CHECK_THROWS_AS(land_expectation_value(dollars_per_acre(1), years(30), DiscountRate()),
                  ContractViolation);
  CHECK_THROWS_AS(equal_annual_equivalent(dollars_per_acre(INFINITY), five_percent),
                  ContractViolation);
}

}  // namespace
}  // namespace staddle
