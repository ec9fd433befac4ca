// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>

#include "io/scenario_fixture.h"
#include "staddle/io/option.h"

namespace staddle {
namespace {

using scenario_tests::bare_land;
using scenario_tests::everything_given;
using scenario_tests::faults_at;
using scenario_tests::faults_of;
using scenario_tests::Json;
using scenario_tests::read;
using scenario_tests::with;
using Lines = std::vector<std::string>;

// The text of the shortest scenario with `what` replaced by `by`.
std::string altered(const std::string& what, const std::string& by) {
  std::string text = bare_land().dump();
  const std::size_t at = text.find(what);
  REQUIRE(at != std::string::npos);
  return text.replace(at, what.size(), by);
}

TEST_CASE("comments and a byte order mark are passed over") {
  const std::string text = bare_land().dump(1);
  CHECK(read("\xEF\xBB\xBF" + text));
  CHECK(read("// one\n" + text + "// last line without end"));
  CHECK(read(altered("\"acres\"", "// { \"acres\": [NaN\n\"acres\"")));
  CHECK(read(altered("bare land", "http://no.comment/ \\\" // nor this"))->title ==
        "http://no.comment/ \" // nor this");
}

TEST_CASE("a file cut off anywhere is a fault and never a scenario") {
  const std::string text = everything_given().dump();
  for (std::size_t length = 0; length < text.size(); ++length) {
    const auto result = read(text.substr(0, length));
    REQUIRE_FALSE(result.has_value());
    REQUIRE_FALSE(result.error().empty());
  }
}

TEST_CASE("what is no text is said to be none") {
  CHECK(faults_of(read(std::string("\x7F"
                                   "ELF\x02\x01\x01\0\0\0",
                                   10))) == Lines{"unreadable at "});
  CHECK(faults_of(read(std::string("{\"title\": \"caf\xE9\"}"))) == Lines{"unreadable at "});
  CHECK(faults_of(read(std::string("\xFF\xFE{\0}\0", 6))) == Lines{"unreadable at "});
  CHECK(faults_of(read(std::string())) == Lines{"malformed at "});
  CHECK(faults_of(read(std::string(" \n\t// nothing\n"))) == Lines{"malformed at "});
}

TEST_CASE("text behind the object is a fault at its line and column") {
  const auto result = read(bare_land().dump() + "\n  true");
  REQUIRE_FALSE(result);
  CHECK(result.error().front().code == FaultCode::malformed);
  CHECK(result.error().front().place == "line 2, column 6");
}

TEST_CASE("brackets may stand 64 deep and not 65") {
  const auto nested = [](std::size_t levels) {
    // The object is the first level.
    return altered("\"acres\":", "\"deep\":" + std::string(levels - 1, '[') +
                                     std::string(levels - 1, ']') + ",\"acres\":");
  };
  CHECK(faults_of(read(nested(64))) == Lines{"unknown key at /deep"});
  const auto deeper = read(nested(65));
  REQUIRE_FALSE(deeper);
  CHECK(deeper.error().front().code == FaultCode::malformed);
  CHECK_FALSE(read(std::string(1000000, '[')));
}

TEST_CASE("a repeated key is named with its pointer and the first value is judged") {
  CHECK(faults_of(read(altered("\"acres\":40", "\"acres\":-1,\"acres\":40"))) ==
        Lines{"out of range at /acres", "repeated key at /acres"});
  CHECK(faults_of(
            read(altered("\"planted_tpa\":600",
                         "\"planted_tpa\":600,\"planted_tpa\":{\"a\":[1,{\"a\":2}],\"a\":3}"))) ==
        Lines{"repeated key at /stand/planted_tpa", "repeated key at /stand/planted_tpa/a"});
}

TEST_CASE("numbers that no double holds are out of range at their place and reading goes on") {
  for (const char* number : {"NaN", "nan", "Infinity", "-Infinity", "inf", "1e999", "-1e309",
                             "123456789e400", "0.001e400"}) {
    CAPTURE(number);
    const auto result =
        read(altered("\"acres\":40", std::string("\"acres\":") + number + ",\"owner\":7"));
    CHECK(faults_of(result) == Lines{"out of range at /acres", "wrong type at /owner"});
    CHECK(result.error().front().text.find(number) != std::string::npos);
  }
}

TEST_CASE("the smallest numbers are zero and minus zero is zero") {
  for (const char* number : {"-0", "-0.0", "1e-999", "-1e-400", "0.000001e-400"}) {
    CAPTURE(number);
    const auto result = read(
        altered("\"establishment_usd_ac\":350", std::string("\"establishment_usd_ac\":") + number));
    REQUIRE(result);
    CHECK(result->costs.establishment == MoneyPerAcre());
    CHECK_FALSE(std::signbit(result->costs.establishment.in(dollars_per_acre)));
  }
}

TEST_CASE("whole numbers beyond the largest integers are still numbers") {
  CHECK(faults_of(read(altered("\"acres\":40", "\"acres\":99999999999999999999999999"))) ==
        Lines{"out of range at /acres"});
  CHECK(faults_of(read(with(bare_land(), "/decisions/max_thinnings", 4294967298.0))) ==
        Lines{"out of range at /decisions/max_thinnings"});
}

TEST_CASE("control characters in a text are refused") {
  for (const char* title :
       {"two\\nlines", "a bell\\u0007", "colour\\u001b[31m", "\\u007f", "next line\\u0085"}) {
    CAPTURE(title);
    const auto result = read(altered("bare land", title));
    CHECK(faults_of(result) == Lines{"out of range at /title"});
    for (const char c : result.error().front().text) CHECK(static_cast<unsigned char>(c) >= 0x20);
  }
  CHECK(read(altered("bare land", "Größe \\u00e9 木"))->title == "Größe é 木");
}

TEST_CASE("slashes and tildes of keys are escaped in pointers") {
  CHECK(faults_of(read(altered("\"acres\"", "\"a/b~c\":1,\"acres\""))) ==
        Lines{"unknown key at /a~1b~0c"});
  // A key that spells the way to another is not that other.
  CHECK(faults_of(read(with(bare_land(), "/decisions", Json{{"guards/min_qmd_in", 3}}))) ==
        Lines{"unknown key at /decisions/guards~1min_qmd_in"});
  CHECK(faults_of(read(with(bare_land(), "/decisions", Json{{"*", 3}, {"#", 4}, {"", 5}}))) ==
        Lines{"unknown key at /decisions/*", "unknown key at /decisions/#",
              "unknown key at /decisions/"});
  CHECK(faults_of(read(with(bare_land(), "/decisions/removal_fraction",
                            Json{{"from", 0.2}, {"to", 0.3}, {"step", 0.1}, {"#", 4}}))) ==
        Lines{"unknown key at /decisions/removal_fraction/#"});
}

TEST_CASE("the nearest known key is named and a far one is not") {
  const auto hint = [](const std::string& pointer) {
    return faults_at(read(with(bare_land(), pointer, 1)), pointer).at(0).hint;
  };
  CHECK(hint("/acre") == "did you mean \"acres\"?");
  CHECK(hint("/economics/real_discount") == "did you mean \"real_discount_rate\"?");
  CHECK(hint("/economics/discount_rate") == "did you mean \"real_discount_rate\"?");
  CHECK(hint("/decisions/max_thinings") == "did you mean \"max_thinnings\"?");
  CHECK(hint("/decisions/guards/min_qmd") == "did you mean \"min_qmd_in\"?");
  CHECK(hint("/stand/site_index") == "did you mean \"site_index_ft\"?");
  CHECK(hint("/storm/zones") == "did you mean \"zone\"?");
  CHECK(hint("/ready/height_ft") == "did you mean \"dominant_height_ft\"?");
  CHECK(hint("/xyz").empty());
}

TEST_CASE("names that a list knows are suggested too") {
  const auto hint = [](const std::string& pointer, const Json& value) {
    return faults_at(read(with(bare_land(), pointer, value)), pointer).at(0).hint;
  };
  CHECK(hint("/stand/model", "loblolly-planted-uplands") ==
        "did you mean \"loblolly-planted-upland\"?");
  CHECK(hint("/storm/zone", "near-coast").empty());
  CHECK(hint("/storm/zone", "in-land") == "did you mean \"inland\"?");
  CHECK(hint("/decisions/thinning_response", "crown_limited") == "did you mean \"crown-limited\"?");
  CHECK(hint("/economics/stumpage_usd_per_ton/sawtimbr", 3) == "did you mean \"sawtimber\"?");
  const auto plants = read(with(bare_land(), "/site/indicator_plants", Json::array({"galberry"})));
  CHECK(faults_at(plants, "/site/indicator_plants/0").at(0).hint == "did you mean \"gallberry\"?");
}

TEST_CASE("all faults of a file are told in the order in which they stand in it") {
  const std::string text = R"({
    "regimes": [{"name": "a", "thinnings": [{"age_yr": 15}], "final_harvest_age_yr": 12}],
    "format": "staddle-scenario/1", "titel": "x", "acres": 0,
    "storm": {"zone": "nowhere", "species": "oak"},
    "economics": {"stumpage_usd_per_ton": {"chip_n_saw": -1, "pulpwood": 7, "sawtimber": "x"},
                  "establishment_usd_ac": 1e999, "harvest_tax_fraction": 0.5,
                  "sale_fee_fraction": 0.5},
    "stand": {"model": "loblolly-planted-coastal", "planted_tpa": 50, "planted_tpa": 600},
    "decisions": {"final_harvest_age_yr": [45, 20], "max_thinnings": 1.5}})";
  CHECK(faults_of(read(text)) ==
        Lines{"missing key at /title", "missing key at /regimes/0/thinnings/0",
              "contradiction at /regimes/0/thinnings/0/age_yr", "unknown key at /titel",
              "out of range at /acres", "unknown name at /storm/zone",
              "unknown name at /storm/species", "missing key at /economics/real_discount_rate",
              "out of range at /economics/stumpage_usd_per_ton/chip_n_saw",
              "wrong type at /economics/stumpage_usd_per_ton/sawtimber",
              "out of range at /economics/establishment_usd_ac",
              "contradiction at /economics/sale_fee_fraction",
              "missing key at /stand/site_index_ft", "out of range at /stand/planted_tpa",
              "repeated key at /stand/planted_tpa",
              "contradiction at /decisions/final_harvest_age_yr",
              "wrong type at /decisions/max_thinnings"});
}

TEST_CASE("every required key is missed by name when it is left out") {
  std::size_t tried = 0;
  const Json scenario = everything_given();
  for (const Option& option : scenario_options()) {
    std::string pointer(option.pointer);
    for (std::size_t at; (at = pointer.find('#')) != std::string::npos;) pointer[at] = '0';
    if (!option.required || !scenario.contains(Json::json_pointer(pointer))) continue;
    CAPTURE(pointer);
    const Faults faults = faults_at(read(scenario_tests::without(scenario, pointer)), pointer);
    REQUIRE(faults.size() == 1);
    CHECK(faults.front().code == FaultCode::missing_key);
    CHECK(faults.front().text.find("required") != std::string::npos);
    ++tried;
  }
  CHECK(tried > 25);
}

}  // namespace
}  // namespace staddle
