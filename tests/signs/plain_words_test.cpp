// SPDX-License-Identifier: GPL-3.0-or-later
#include "signs/plain_words.h"

#include <catch2/catch.hpp>
#include <limits>

#include "staddle/base/contract.h"

namespace staddle {
namespace {

TEST_CASE("numbers have thousands separators and no minus before nothing") {
  CHECK(words::number(0) == "0");
  CHECK(words::number(999.4) == "999");
  CHECK(words::number(999.5) == "1,000");
  CHECK(words::number(1234567.25, 1) == "1,234,567.2");
  CHECK(words::number(-1234.4) == "-1,234");
  CHECK(words::number(-0.3) == "0");
  CHECK(words::number(-0.04, 1) == "0.0");
  CHECK_THROWS_AS(words::number(std::numeric_limits<double>::infinity()), ContractViolation);
}

TEST_CASE("money of an acre is rounded to five dollars and of a tract to five hundred") {
  CHECK(words::money(dollars_per_acre(1237.49)) == "$1,235");
  CHECK(words::money(dollars_per_acre(1237.51)) == "$1,240");
  CHECK(words::money(dollars_per_acre(-41)) == "-$40");
  CHECK(words::money(dollars_per_acre(-1)) == "$0");
  CHECK(words::tract_money(dollars(76249)) == "$76,000");
  CHECK(words::tract_money(dollars(76251)) == "$76,500");
}

TEST_CASE("a size has no sign and never hides a small amount as nothing") {
  CHECK(words::size_of(dollars_per_acre(-41)) == "$40");
  CHECK(words::size_of(dollars_per_acre(2.4)) == "less than $5");
  CHECK(words::size_of(dollars_per_acre(2.6)) == "$5");
  CHECK(words::size_of(dollars_per_acre(0)) == "$0");
  CHECK(words::size_of(dollars(100)) == "less than $500");
}

TEST_CASE("shares below one percent keep their digits") {
  CHECK(words::percent(0.3333) == "33 percent");
  CHECK(words::percent(0.008) == "0.8 percent");
  CHECK(words::percent(0.0002) == "0.02 percent");
  CHECK(words::percent(0.0) == "0 percent");
  CHECK(words::chance(0.0125) == "1.25 percent");
  CHECK(words::chance(0.01 + 0.001) == "1.1 percent");
}

TEST_CASE("cuts and lists read as one says them") {
  CHECK(words::removal(1.0 / 3.0) == "a third");
  CHECK(words::removal(0.5) == "half");
  CHECK(words::removal(0.45) == "45 percent");
  CHECK(words::count(2) == "two");
  CHECK(words::count(11) == "11");
  CHECK(words::list({"a"}) == "a");
  CHECK(words::list({"a", "b"}) == "a and b");
  CHECK(words::list({"a", "b", "c"}, "or") == "a, b or c");
  CHECK(words::list({}).empty());
  CHECK(words::product("chip_n_saw") == "chip-n-saw");
  CHECK(words::peril("hurricane, major") == "major hurricane");
  CHECK(words::peril("a, b, c") == "a, b, c");
  CHECK(words::capital("ice") == "Ice");
}

}  // namespace
}  // namespace staddle
