// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/value_writer.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

namespace staddle {
namespace {

TEST_CASE("no JSON holds a number that is not finite") {
  CHECK_THROWS_AS(json::number(std::nan("")), ContractViolation);
  CHECK_THROWS_AS(json::number(-std::numeric_limits<double>::infinity()), ContractViolation);
  CHECK_THROWS_AS(json::usd_ac(dollars_per_acre(std::nan(""))), ContractViolation);
  CHECK_THROWS_AS(json::count(std::numeric_limits<double>::infinity()), ContractViolation);
}

TEST_CASE("a number of JSON reads back as the same double and is never minus zero") {
  for (const double value : {0.1, 1.0 / 3.0, -2.5, 1e-300, 123456789.25}) {
    CAPTURE(value);
    CHECK(json::Value::parse(json::number(value).dump()).get<double>() == value);
  }
  CHECK(json::number(-0.0).dump() == "0.0");
}

TEST_CASE("a count is whole up to the largest that a double holds exactly") {
  CHECK(json::count(25306).dump() == "25306");
  CHECK(json::count(9007199254740991.0).dump() == "9007199254740991");
  CHECK(json::count(9007199254740992.0).is_number_float());
  CHECK(json::count(1e300).is_number_float());
  CHECK(json::count(2.5).dump() == "2.5");
}

TEST_CASE("tons by product keep the order of the products and need one yield for each") {
  const std::vector<ProductLimit> products{{"saw", inches(11), inches(8), 1.0},
                                           {"pulp", inches(4), inches(3), 1.0}};
  CHECK(json::tons_by_product(products, {tons_per_acre(2), tons_per_acre(1)}).dump() ==
        R"({"saw":2.0,"pulp":1.0})");
  CHECK_THROWS_AS(json::tons_by_product(products, {tons_per_acre(2)}), ContractViolation);
}

TEST_CASE("the crown ratio of a stand too young for one is null") {
  StandMeasures stand;
  CHECK(json::measures(stand)["live_crown_ratio"].is_null());
  stand.live_crown_ratio = 0.4;
  CHECK(json::measures(stand)["live_crown_ratio"] == 0.4);
}

TEST_CASE("an assumed value keeps its kind in the result") {
  const json::Value assumed = json::assumptions({{"/decisions/max_thinnings", "2", "default"},
                                                 {"/a", "[12,35]", "default"},
                                                 {"/b", "\"replant\"", "default"}});
  CHECK(assumed[0]["value"] == 2);
  CHECK(assumed[1]["value"].size() == 2);
  CHECK(assumed[2]["value"] == "replant");
  CHECK_THROWS_AS(json::assumptions({{"/a", "replant", "default"}}), ContractViolation);
}

TEST_CASE("text that is not UTF-8 does not keep a result from being written") {
  CHECK(json::result_text({{"title", "a\xff"}}).find("a\xEF\xBF\xBD") != std::string::npos);
}

}  // namespace
}  // namespace staddle
