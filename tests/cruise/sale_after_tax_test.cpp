// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/cruise/sale_after_tax.h"

#include <catch2/catch.hpp>

#include "support/near.h"

namespace staddle {
namespace {

using support::relative;
using support::round_off;

TaxRules rules() {
  TaxRules rules;
  rules.long_term_rate = 0.15;
  rules.basis = dollars_per_acre(200);
  return rules;
}

TEST_CASE("a sale leaves its proceeds less tax on what exceeds the basis") {
  const MoneyPerAcre left = after_tax(dollars_per_acre(1000), dollars_per_acre(1000), rules());
  CHECK(left.in(dollars_per_acre) == relative(1000 - 0.15 * 800, round_off));
}

TEST_CASE("parts of a stand leave together what the whole leaves") {
  const MoneyPerAcre all = dollars_per_acre(1000);
  const MoneyPerAcre parts = after_tax(dollars_per_acre(300), all, rules()) +
                             after_tax(dollars_per_acre(700), all, rules());
  CHECK(parts.in(dollars_per_acre) ==
        relative(after_tax(all, all, rules()).in(dollars_per_acre), round_off));
}

TEST_CASE("a stand worth nothing leaves nothing to tax") {
  CHECK(after_tax(MoneyPerAcre(), MoneyPerAcre(), rules()) == MoneyPerAcre());
}

TEST_CASE("after tax an estimate keeps its interval around its mean") {
  const Estimate<MoneyPerAcre> gross{
      dollars_per_acre(1000), dollars_per_acre(100), 0.4,
      Interval<MoneyPerAcre>{dollars_per_acre(800), dollars_per_acre(1200)}, std::nullopt};
  const Estimate<MoneyPerAcre> net = after_tax(gross, rules());
  CHECK(net.mean.in(dollars_per_acre) == relative(880, round_off));
  CHECK(net.standard_error->in(dollars_per_acre) == relative(85, round_off));
  CHECK(*net.coefficient_of_variation == relative(0.4 * 850 / 880, round_off));
  CHECK(net.interval_90->low.in(dollars_per_acre) == relative(710, round_off));
  CHECK(net.interval_90->high.in(dollars_per_acre) == relative(1050, round_off));
  CHECK_FALSE(net.interval_95);
}

}  // namespace
}  // namespace staddle
