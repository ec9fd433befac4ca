// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/units/age.h"

#include <type_traits>

#include "support/near.h"

namespace staddle {
namespace {

static_assert(!std::is_convertible_v<double, Age> && !std::is_constructible_v<Age, double>);
static_assert(!std::is_constructible_v<Age, Years> && !std::is_constructible_v<Years, Age>);
static_assert(!std::is_constructible_v<Age, CalendarYear>);

TEST_CASE("two ages differ by a number of years") {
  static_assert(std::is_same_v<decltype(age(25.0) - age(17.0)), Years>);
  CHECK(age(25.0) - age(17.0) == years(8.0));
  CHECK(age(17.0) - age(25.0) == years(-8.0));
}

TEST_CASE("an age and a number of years make another age") {
  static_assert(std::is_same_v<decltype(age(17.0) + years(8.0)), Age>);
  CHECK(age(17.0) + years(8.0) == age(25.0));
  CHECK(age(25.0) - years(8.0) == age(17.0));
  CHECK(age(25.0) + (age(17.0) - age(25.0)) == age(17.0));
}

TEST_CASE("calendar years behave as ages do on a line of their own") {
  CHECK(calendar_year(2030.0) - calendar_year(2025.0) == years(5.0));
  CHECK(calendar_year(2025.0) + years(5.0) == calendar_year(2030.0));
}

TEST_CASE("ages are ordered") {
  CHECK((age(16.0) < age(17.0) && age(17.0) > age(16.0) && age(16.0) != age(17.0)));
  CHECK((age(16.0) <= age(16.0) && age(16.0) == age(16.0)));
}

TEST_CASE("an age reads back in years and as the whole years completed") {
  CHECK(age(16.75).in(years) == 16.75);
  CHECK(age(16.75).whole() == 16);
  CHECK(age(16.0).whole() == 16);
  CHECK(Age().whole() == 0);
}

}  // namespace
}  // namespace staddle
