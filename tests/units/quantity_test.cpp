// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/units/quantity.h"

#include <cmath>
#include <limits>
#include <type_traits>

#include "staddle/units/units.h"
#include "support/near.h"

namespace staddle {
namespace {

static_assert(sizeof(Height) == sizeof(double), "a quantity costs what its number costs");
static_assert(std::is_trivially_copyable_v<Height>, "so that it travels in a register");
static_assert(!std::is_convertible_v<double, Height> && !std::is_constructible_v<Height, double>);
static_assert(!std::is_convertible_v<Height, double> && !std::is_constructible_v<double, Height>);
static_assert(!std::is_constructible_v<Height, Diameter>, "both are lengths, and kept apart");
static_assert(!std::is_constructible_v<Money, MoneyPerAcre>);

TEST_CASE("a unit reads back exactly the number it was given") {
  for (const double number : {0.0, 63.7, -2.5, 1e-300, 1e300}) {
    CHECK(feet(number).in(feet) == number);
    CHECK(dollars_per_acre(number).in(dollars_per_acre) == number);
  }
}

TEST_CASE("a quantity not given a number is zero") {
  CHECK(Height().in(feet) == 0.0);
  CHECK(Money() == dollars(0.0));
}

TEST_CASE("quantities of one kind add and subtract and change sign") {
  CHECK(feet(60.0) + feet(1.5) == feet(61.5));
  CHECK(feet(60.0) - feet(1.5) == feet(58.5));
  CHECK(-dollars(4.0) == dollars(-4.0));
  BasalArea basal_area = square_feet_per_acre(120.0);
  basal_area -= square_feet_per_acre(40.0);
  CHECK(basal_area == square_feet_per_acre(80.0));
  basal_area += square_feet_per_acre(5.0);
  CHECK(basal_area == square_feet_per_acre(85.0));
}

TEST_CASE("a quantity scales by a number from either side") {
  CHECK(tons_per_acre(30.0) * 1.5 == tons_per_acre(45.0));
  CHECK(1.5 * tons_per_acre(30.0) == tons_per_acre(45.0));
  CHECK(tons_per_acre(30.0) / 4.0 == tons_per_acre(7.5));
}

TEST_CASE("the ratio of two quantities of one kind is a number") {
  static_assert(std::is_same_v<decltype(inches(9.0) / inches(6.0)), double>);
  CHECK(inches(9.0) / inches(6.0) == 1.5);
}

TEST_CASE("the six comparisons of quantities agree with one another") {
  const Yield less = tons_per_acre(1.0);
  const Yield more = tons_per_acre(2.0);
  CHECK((less < more && less <= more && more > less && more >= less && less != more));
  CHECK_FALSE((less > more || less >= more || less == more));
  CHECK((less == tons_per_acre(1.0) && less <= tons_per_acre(1.0) && less >= tons_per_acre(1.0)));
}

TEST_CASE("a quantity that is not a number equals nothing and is below nothing") {
  const Height unknown = feet(std::numeric_limits<double>::quiet_NaN());
  CHECK_FALSE(unknown == unknown);
  CHECK_FALSE((unknown < feet(1.0) || unknown >= feet(1.0)));
}

TEST_CASE("tons times price is money and per acre times acres is the whole tract") {
  CHECK(tons_per_acre(40.0) * dollars_per_ton(7.0) == dollars_per_acre(280.0));
  CHECK(tons_per_acre(40.0) * acres(12.5) == tons(500.0));
  CHECK(dollars_per_acre(280.0) * acres(10.0) == dollars(2800.0));
}

TEST_CASE("failing checks show the number of a quantity") {
  CHECK(Catch::Detail::stringify(feet(61.5)) == "61.5");
}

}  // namespace
}  // namespace staddle
