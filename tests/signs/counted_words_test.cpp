// SPDX-License-Identifier: GPL-3.0-or-later
#include "signs/counted_words.h"

#include <catch2/catch.hpp>

namespace staddle {
namespace {

TEST_CASE("what is counted is singular beside a one and plural beside all else") {
  CHECK(words::counted(1, "year") == "1 year");
  CHECK(words::counted(0, "year") == "0 years");
  CHECK(words::counted(15, "year") == "15 years");
  CHECK(words::counted(1.2, "ton") == "1 ton");
  CHECK(words::counted(1.2, "ton", 1) == "1.2 tons");
  CHECK(words::counted(12345, "plan") == "12,345 plans");
}

TEST_CASE("an area has as many digits as tell it") {
  CHECK(words::acres_of(acres(62)) == "62 acres");
  CHECK(words::acres_of(acres(62.5)) == "62.5 acres");
  CHECK(words::acres_of(acres(62.01)) == "62 acres");
  CHECK(words::acres_of(acres(1)) == "1 acre");
  CHECK(words::acres_of(acres(0.25)) == "0.25 acres");
  CHECK(words::acres_of(acres(0.01)) == "0.01 acres");
  CHECK(words::acres_of(acres(0.0001)) == "less than 0.001 acres");
}

}  // namespace
}  // namespace staddle
