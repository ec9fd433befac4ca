// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/csv_writer.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "staddle/base/contract.h"

namespace staddle {
namespace {

TEST_CASE("a cell of CSV is quoted only where it has to be") {
  CHECK(csv::line({"a", "", "before cut"}) == "a,,before cut\r\n");
  CHECK(csv::line({"pine, other", "the \"best\"", "two\nlines"}) ==
        "\"pine, other\",\"the \"\"best\"\"\",\"two\nlines\"\r\n");
}

TEST_CASE("a number of CSV reads back as the same double and is never minus zero") {
  for (const double value : {0.1, 1.0 / 3.0, -2.5, 1e-300, 123456789.25}) {
    CAPTURE(value);
    CHECK(std::stod(csv::number(value)) == value);
  }
  CHECK(csv::number(-0.0) == "0");
}

TEST_CASE("no CSV holds a number that is not finite") {
  CHECK_THROWS_AS(csv::number(std::nan("")), ContractViolation);
  CHECK_THROWS_AS(csv::number(std::numeric_limits<double>::infinity()), ContractViolation);
}

}  // namespace
}  // namespace staddle
