// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <vector>

#include "staddle/base/contract.h"
#include "staddle/finance/valuation.h"
#include "support/near.h"
#include "support/seed.h"

namespace staddle {
namespace {

using support::relative;
using support::within;

// An amount a year, from year 0 on.
CashFlows yearly(const std::vector<double>& amounts) {
  CashFlows flows;
  for (std::size_t t = 0; t < amounts.size(); ++t) {
    flows.push_back({years(static_cast<double>(t)), dollars_per_acre(amounts[t]), ""});
  }
  return flows;
}

std::vector<double> rates_of(const CashFlows& flows) {
  std::vector<double> rates;
  for (const DiscountRate& rate : internal_rates_of_return(flows).all) {
    rates.push_back(rate.per_year());
  }
  return rates;
}

// Amounts whose internal rates are known: the product of (-1 + (1 + r) v), v^t in year t.
std::vector<double> amounts_with_rates(const std::vector<double>& rates) {
  std::vector<double> amounts = {1.0};
  for (const double rate : rates) {
    std::vector<double> product(amounts.size() + 1, 0.0);
    for (std::size_t t = 0; t < amounts.size(); ++t) {
      product[t] -= amounts[t];
      product[t + 1] += (1.0 + rate) * amounts[t];
    }
    amounts = product;
  }
  return amounts;
}

TEST_CASE("internal rate of one cost and one income is the growth of the money") {
  const auto rates = rates_of(yearly({-100, 0, 121}));
  REQUIRE(rates.size() == 1);
  CHECK(rates[0] == within(0.1, 1e-12));
}

TEST_CASE("internal rates known beforehand are all found and rise") {
  const std::vector<double> known = {-0.5, -0.02, 0.04, 0.041, 0.6, 4.0};
  const auto rates = rates_of(yearly(amounts_with_rates(known)));
  REQUIRE(rates.size() == known.size());
  for (std::size_t i = 0; i < known.size(); ++i) CHECK(rates[i] == within(known[i], 1e-8));
}

TEST_CASE("reported rate is the smallest that is not negative") {
  const InternalRates rates =
      internal_rates_of_return(yearly(amounts_with_rates({-0.5, 0.04, 0.6})));
  REQUIRE(rates.reported.has_value());
  CHECK(rates.reported->per_year() == within(0.04, 1e-11));
  CHECK(rates.reason.empty());
}

TEST_CASE("reported rate among negative ones is the largest") {
  const InternalRates rates = internal_rates_of_return(yearly(amounts_with_rates({-0.5, -0.1})));
  REQUIRE(rates.all.size() == 2);
  CHECK(rates.reported->per_year() == within(-0.1, 1e-11));
}

TEST_CASE("rate of money that only comes back is exactly nothing") {
  const InternalRates even = internal_rates_of_return(yearly({-100, 40, 0, 60}));
  REQUIRE(even.all.size() == 1);
  CHECK(even.reported->per_year() == 0.0);
  // A second, larger rate does not displace it.
  const InternalRates both = internal_rates_of_return(yearly(amounts_with_rates({0.0, 0.3})));
  REQUIRE(both.all.size() == 2);
  CHECK(both.reported->per_year() == 0.0);
}

TEST_CASE("rate at which the worth only touches nothing counts once") {
  // -100 (1 - 1.1 v)^2
  const auto rates = rates_of(yearly({-100, 220, -121}));
  REQUIRE(rates.size() == 1);
  CHECK(rates[0] == within(0.1, 1e-7));
}

TEST_CASE("two rates a hundredth of a percent apart are both found") {
  const auto rates = rates_of(yearly(amounts_with_rates({0.05, 0.0501})));
  REQUIRE(rates.size() == 2);
  CHECK(rates[0] == within(0.05, 1e-9));
  CHECK(rates[1] == within(0.0501, 1e-9));
}

TEST_CASE("rates at the ends of the search are left out and those just inside are not") {
  CHECK(rates_of(yearly({-1, 11})).empty());
  CHECK(rates_of(yearly({-1, 10.999})).size() == 1);
  CHECK(rates_of(yearly({-100, 0.99})).empty());
  CHECK(rates_of(yearly({-100, 1.01})).size() == 1);
}

TEST_CASE("lists without an internal rate say why") {
  const auto reason = [](const std::vector<double>& amounts) {
    const InternalRates rates = internal_rates_of_return(yearly(amounts));
    CHECK(rates.all.empty());
    CHECK_FALSE(rates.reported.has_value());
    return rates.reason;
  };
  CHECK(reason({}) == "no money moves");
  CHECK(reason({0, 0}) == "no money moves");
  CHECK(reason({5, 0, 3}) == "nothing is ever paid out");
  CHECK(reason({-5, 0, -3}) == "nothing is ever earned");
  CHECK(reason({1, -1, 1}) ==
        "the present value is never 0 at any rate between -99 and 1000 percent");
}

TEST_CASE("money of one year counts together and leaves no ghost of rounding") {
  // 0.1 + 0.2 - 0.3 is not 0 in doubles; as a payment it would give a second rate.
  CashFlows flows = yearly({0.1, 0, -100});
  flows.push_back({years(0), dollars_per_acre(0.2), ""});
  flows.push_back({years(0), dollars_per_acre(-0.3), ""});
  flows.push_back({years(30), dollars_per_acre(400), ""});
  const auto rates = rates_of(flows);
  REQUIRE(rates.size() == 1);
  CHECK(rates[0] == within(std::pow(4.0, 1.0 / 28.0) - 1.0, 1e-12));
}

TEST_CASE("internal rates do not change with the scale of money nor with waiting years") {
  const std::vector<double> amounts = {-310, -4.5, 60, -4.5, -400, 690, -4.5, 265};
  const auto rates = rates_of(yearly(amounts));
  REQUIRE_FALSE(rates.empty());
  std::vector<double> scaled = {0.0, 0.0, 0.0};
  for (const double amount : amounts) scaled.push_back(7.0 * amount);
  const auto others = rates_of(yearly(scaled));
  REQUIRE(others.size() == rates.size());
  for (std::size_t i = 0; i < rates.size(); ++i) CHECK(others[i] == within(rates[i], 1e-10));
}

TEST_CASE("rotations at random have every rate at which a fine grid sees a change") {
  const support::TaggedSeed seed("internal rates of random rotations");
  RandomStream random = seed.stream();
  for (int trial = 0; trial < 100; ++trial) {
    // Establishment, a yearly cost, up to three thinnings, a harvest, two years' delay.
    const std::size_t age = 20 + random.next_below(40);
    std::vector<double> amounts(age + 3, -10.0 * random.next_uniform());
    amounts[0] = -500.0 * random.next_uniform();
    for (int k = 0; k < 3; ++k) {
      amounts[1 + random.next_below(age - 1)] += 800.0 * random.next_uniform() - 200.0;
    }
    amounts[age] += 3000.0 * random.next_uniform();
    const CashFlows flows = yearly(amounts);
    const auto rates = rates_of(flows);
    const auto worth = [&flows](double rate) {
      return net_present_value(flows, DiscountRate::real(rate)).in(dollars_per_acre);
    };
    std::size_t seen = 0;
    for (double rate = -0.6; rate < 9.99; rate += 0.003) {
      if (worth(rate) * worth(rate + 0.003) >= 0.0) continue;
      ++seen;
      CHECK(std::any_of(rates.begin(), rates.end(),
                        [rate](double r) { return r >= rate && r <= rate + 0.003; }));
    }
    CHECK(rates.size() >= seen);
    for (const double rate : rates) {
      const double scale = std::fabs(worth(rate * (1 + 1e-6) + 1e-6));
      CHECK(std::fabs(worth(rate)) <= 1e-3 * scale);
    }
  }
}

TEST_CASE("internal rates are of the kind the money is") {
  const auto kind = [](DiscountRate::Kind asked) {
    return internal_rates_of_return(yearly({-1, 2}), asked).reported->kind();
  };
  CHECK(kind(DiscountRate::Kind::real) == DiscountRate::Kind::real);
  CHECK(kind(DiscountRate::Kind::nominal) == DiscountRate::Kind::nominal);
}

TEST_CASE("internal rates refuse parts of years and what is not finite") {
  const auto at = [](double year, double amount) {
    return CashFlows{{years(year), dollars_per_acre(amount), ""}};
  };
  CHECK_NOTHROW(internal_rates_of_return(at(10'000, 1)));
  CHECK_THROWS_AS(internal_rates_of_return(at(10'001, 1)), ContractViolation);
  CHECK_THROWS_AS(internal_rates_of_return(at(0.5, 1)), ContractViolation);
  CHECK_THROWS_AS(internal_rates_of_return(at(-1, 1)), ContractViolation);
  CHECK_THROWS_AS(internal_rates_of_return(at(1, std::nan(""))), ContractViolation);
  CHECK_THROWS_AS(internal_rates_of_return(at(std::nan(""), 1)), ContractViolation);
}

}  // namespace
}  // namespace staddle
