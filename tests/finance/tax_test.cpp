// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/finance/tax.h"

#include <catch2/catch.hpp>
#include <numeric>

#include "staddle/base/contract.h"
#include "support/money.h"
#include "support/near.h"

namespace staddle {
namespace {

using support::relative;
using support::round_off;
using support::usd;
using support::within;

double sum(const std::vector<Money>& deductions) {
  return std::accumulate(deductions.begin(), deductions.end(), 0.0,
                         [](double total, Money money) { return total + money.in(dollars); });
}

TEST_CASE("all that planting costs is deducted in the end and no more") {
  for (const double cost : {0.0, 0.01, 9'999.0, 10'000.0, 10'001.0, 350'000.0}) {
    CAPTURE(cost);
    CHECK(sum(reforestation_deductions(dollars(cost))) == within(cost, 1e-6));
  }
}

TEST_CASE("planting costs up to the limit are deducted at once") {
  const auto at_limit = reforestation_deductions(dollars(reforestation_deduction_limit_usd));
  CHECK(at_limit.front().in(dollars) == within(10'000, 1e-9));
  CHECK(at_limit.back().in(dollars) == 0.0);
  CHECK(reforestation_deductions(dollars(10'840)).back().in(dollars) == within(60, 1e-9));
}

TEST_CASE("a nominal deduction is worth less where there is inflation") {
  const DiscountRate rate = DiscountRate::real(0.05);
  CHECK(nominal_discount_factor(rate, 0.0, years(10)) ==
        relative(rate.discount_factor(years(10)), round_off));
  CHECK(nominal_discount_factor(rate, 0.02, years(10)) ==
        relative(rate.discount_factor(years(10)) / std::pow(1.02, 10), round_off));
}

TEST_CASE("deductions within the limit save the ordinary rate of the cost") {
  TaxRules rules;
  rules.ordinary_rate = 0.22;
  const MoneyPerAcre saved = worth_of_reforestation_deductions(dollars_per_acre(350), acres(20),
                                                               rules, DiscountRate::real(0.05));
  CHECK(usd(saved) == relative(0.22 * 350, round_off));
}

TEST_CASE("planting more acres at once makes the deductions worth less an acre") {
  const TaxRules rules;
  const DiscountRate rate = DiscountRate::real(0.05);
  const auto saved = [&](double area) {
    return worth_of_reforestation_deductions(dollars_per_acre(350), acres(area), rules, rate);
  };
  CHECK(saved(28) == saved(10));
  CHECK(saved(62) < saved(28));
  CHECK(saved(1000) < saved(62));
}

}  // namespace
}  // namespace staddle
