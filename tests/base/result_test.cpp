// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/base/result.h"

#include <catch2/catch.hpp>
#include <memory>
#include <string>

namespace staddle {
namespace {

TEST_CASE("a result made from a value holds it and no error") {
  const Result<int> result = 7;
  CHECK(result);
  CHECK(result.has_value());
  CHECK(result.value() == 7);
  CHECK(*result == 7);
  CHECK_THROWS_AS(result.error(), ContractViolation);
}

TEST_CASE("a result made from faults holds all of them and no value") {
  Result<int> result = Faults{{.code = FaultCode::missing_key, .text = "first"},
                              {.code = FaultCode::wrong_type, .text = "second"}};
  CHECK_FALSE(result);
  REQUIRE(result.error().size() == 2);
  CHECK(result.error()[0].text == "first");
  CHECK(result.error()[1].code == FaultCode::wrong_type);
  CHECK_THROWS_AS(result.value(), ContractViolation);
  CHECK_THROWS_AS(*result, ContractViolation);
  CHECK_THROWS_AS(std::move(result).value(), ContractViolation);
}

TEST_CASE("a result gives its value away when it is itself given away") {
  Result<std::unique_ptr<int>> result = std::make_unique<int>(3);
  const std::unique_ptr<int> taken = std::move(result).value();
  CHECK(*taken == 3);
}

TEST_CASE("a result lets its value be changed and its members be reached") {
  Result<std::string> result = std::string("pine");
  *result += " stand";
  CHECK(result->size() == 10);
  CHECK(result.value() == "pine stand");
}

TEST_CASE("value and error may be of one type that converts from nothing else") {
  struct Refused {
    int reason;
  };
  const Result<int, Refused> result = Refused{4};
  CHECK(result.error().reason == 4);
}

}  // namespace
}  // namespace staddle
