// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/finance/rate.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "staddle/base/contract.h"
#include "support/near.h"

namespace staddle {
namespace {

using support::relative;
using support::round_off;

TEST_CASE("rate compounds once a year") {
  const DiscountRate rate = DiscountRate::real(0.05);
  CHECK(rate.discount_factor(years(0)) == 1.0);
  CHECK(rate.discount_factor(years(1)) == relative(1.0 / 1.05, round_off));
  CHECK(rate.discount_factor(years(2)) == relative(1.0 / 1.1025, round_off));
  CHECK(rate.discount_factor(years(-1)) == relative(1.05, round_off));
}

TEST_CASE("discount factors of two spans multiply") {
  const DiscountRate rate = DiscountRate::real(0.07);
  for (const double span : {0.5, 3.0, 41.0}) {
    CHECK(rate.discount_factor(years(10)) * rate.discount_factor(years(span)) ==
          relative(rate.discount_factor(years(10 + span)), round_off));
  }
}

TEST_CASE("rate knows whether it is real") {
  CHECK(DiscountRate().kind() == DiscountRate::Kind::real);
  CHECK(DiscountRate().per_year() == 0.0);
  CHECK(DiscountRate::nominal(0.08).kind() == DiscountRate::Kind::nominal);
  CHECK_FALSE(DiscountRate::nominal(0.08) == DiscountRate::real(0.08));
  const DiscountRate both = DiscountRate::from_real_and_inflation(DiscountRate::real(0.06), 0.02);
  CHECK(both.kind() == DiscountRate::Kind::nominal);
  CHECK(both.per_year() == relative(0.0812, round_off));
}

TEST_CASE("perpetuity factor is the sum of its series") {
  for (const double fraction : {0.01, 0.05, 0.5}) {
    const DiscountRate rate = DiscountRate::real(fraction);
    double sum = 0.0;
    for (int k = 0; k < 400; ++k) sum += rate.discount_factor(years(26.0 * k));
    CHECK(rate.perpetuity_factor(years(26)) == relative(sum, round_off));
  }
}

TEST_CASE("perpetuity factor keeps its digits at the smallest rates") {
  // 1 / (1 - v^n) = 1/(n r) + (n + 1)/(2 n) + terms of order r.
  const double tiny = 1e-9;
  const double expected = 1.0 / (30 * tiny) + 31.0 / 60.0;
  CHECK(DiscountRate::real(tiny).perpetuity_factor(years(30)) == relative(expected, 1e-14));
}

TEST_CASE("rate at or below minus one is refused and just above it is not") {
  CHECK_NOTHROW(DiscountRate::real(std::nextafter(-1.0, 0.0)));
  CHECK_THROWS_AS(DiscountRate::real(-1.0), ContractViolation);
  CHECK_THROWS_AS(DiscountRate::nominal(std::nan("")), ContractViolation);
  CHECK_THROWS_AS(DiscountRate::real(std::numeric_limits<double>::infinity()), ContractViolation);
}

TEST_CASE("inflation is added to real rates only") {
  CHECK_THROWS_AS(DiscountRate::from_real_and_inflation(DiscountRate::nominal(0.06), 0.02),
                  ContractViolation);
  CHECK_THROWS_AS(DiscountRate::from_real_and_inflation(DiscountRate::real(0.06), -1.0),
                  ContractViolation);
}

TEST_CASE("perpetuity without interest or without a period is refused") {
  CHECK_THROWS_AS(DiscountRate().perpetuity_factor(years(30)), ContractViolation);
  CHECK_THROWS_AS(DiscountRate::real(-0.01).perpetuity_factor(years(30)), ContractViolation);
  CHECK_THROWS_AS(DiscountRate::real(0.05).perpetuity_factor(years(0)), ContractViolation);
}

TEST_CASE("discount factor that is no finite number is refused") {
  CHECK_THROWS_AS(DiscountRate::real(0.05).discount_factor(years(std::nan(""))), ContractViolation);
  CHECK_THROWS_AS(DiscountRate::real(-0.99).discount_factor(years(1000)), ContractViolation);
}

}  // namespace
}  // namespace staddle
