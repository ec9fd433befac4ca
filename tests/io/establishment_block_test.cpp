// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>

#include "io/scenario_fixture.h"
#include "staddle/io/model_library.h"
#include "support/near.h"

namespace staddle::scenario_tests {
namespace {

Json ways(const std::string& alternatives, Json scenario = bare_land()) {
  return with(std::move(scenario), "/establishment",
              Json{{"alternatives", Json::parse(alternatives)}});
}

Json upland() { return with(bare_land(), "/stand/model", "loblolly-planted-upland"); }

const std::string sprayed = R"({"name": "sprayed", "methods": ["chemical"], "years_gained": 2,
  "practices": [{"what": "spray", "age_yr": 0, "usd_ac": 90},
                {"what": "release", "age_yr": 3, "usd_ac": 80}]})";

}  // namespace

TEST_CASE("a scenario without an establishment block names no ways") {
  CHECK_FALSE(read(bare_land())->establishment);
}

TEST_CASE("an empty establishment block takes all ways built in and says so") {
  const auto scenario = read(with(bare_land(), "/establishment", Json::object()));
  REQUIRE(scenario);
  REQUIRE(scenario->establishment);
  CHECK(scenario->establishment->alternatives.size() == built_in_establishments().size());
  CHECK_FALSE(scenario->establishment->use);
  CHECK(std::ranges::any_of(scenario->assumed, [](const Assumption& one) {
    return one.pointer == "/establishment/alternatives";
  }));
}

TEST_CASE("a way written out is what the file says and nothing more") {
  const auto scenario = read(ways("[" + sprayed + "]"));
  REQUIRE(scenario);
  const EstablishmentAlternative& way = scenario->establishment->alternatives.at(0);
  CHECK(way.name == "sprayed");
  CHECK(way.methods == std::vector{SiteMethod::chemical});
  CHECK(way.establishment() == dollars_per_acre(90));
  CHECK(way.later_practices().at(0).at == age(3));
  CHECK_FALSE(way.planted);
  CHECK(way.response.years_gained == 2.0);
  CHECK(way.site_index_shift == feet(0));
  CHECK_FALSE(way.response.precommercial);
}

TEST_CASE("a built-in way keeps what the file does not say otherwise") {
  const auto scenario = read(ways(R"([
    {"from": "plant-600-chemical-burn"},
    {"from": "plant-600-chemical-burn", "name": "fewer", "planted_tpa": 450, "years_gained": 1},
    {"from": "plant-600-chemical-burn", "name": "my costs",
     "practices": [{"what": "all", "age_yr": 0, "usd_ac": 300}]}])"));
  REQUIRE(scenario);
  const auto& all = scenario->establishment->alternatives;
  CHECK(all[0].name == "600 trees after spraying and a burn");
  CHECK(all[0].response.years_gained == 2.5);
  CHECK(all[0].planted == trees_per_acre(600));
  // 90 + 38 + 75, and 600 or 450 seedlings at 70 a thousand.
  CHECK(all[0].establishment().in(dollars_per_acre) == support::within(245, 1e-9));
  CHECK(all[1].establishment().in(dollars_per_acre) == support::within(234.5, 1e-9));
  CHECK(all[1].response.years_gained == 1.0);
  CHECK(all[1].planted == trees_per_acre(450));
  CHECK(all[2].establishment() == dollars_per_acre(300));
  CHECK(all[2].response.years_gained == 2.5);
}

TEST_CASE("the alternative in use is found by its name and its taking over is told") {
  Json json = ways("[" + sprayed + "]");
  json["establishment"]["use"] = "sprayed";
  const auto scenario = read(json);
  REQUIRE(scenario);
  CHECK(scenario->establishment->use == 0u);
  CHECK(std::ranges::any_of(scenario->assumed, [](const Assumption& one) {
    return one.pointer == "/establishment/use" && one.value_json == "\"sprayed\"";
  }));
  json["establishment"]["use"] = "spraid";
  const auto wrong = read(json);
  CHECK(faults_of(wrong) == std::vector<std::string>{"unknown name at /establishment/use"});
  CHECK(wrong.error().front().hint == "did you mean \"sprayed\"?");
}

TEST_CASE("beds may not be used without a statement and are read all the same") {
  const Json beds = ways(R"([{"from": "plant-600-bed", "name": "beds"}])");
  CHECK(read(beds));
  Json used = beds;
  used["establishment"]["use"] = "beds";
  CHECK(faults_of(read(used)) == std::vector<std::string>{"contradiction at /establishment/use"});
  CHECK(read(with(used, "/site", Json{{"wet_site_statement", "the county has seen it"}})));
}

TEST_CASE("hardwoods are counted on the upland fit and refused on the coastal one") {
  const std::string mixed = R"([{"name": "mixed", "hardwood_percent": 20}])";
  const auto upland_read = read(ways(mixed, upland()));
  REQUIRE(upland_read);
  CHECK(upland_read->establishment->alternatives[0].response.hardwood_percent == 20.0);
  CHECK(
      faults_of(read(ways(mixed))) ==
      std::vector<std::string>{"contradiction at /establishment/alternatives/0/hardwood_percent"});
}

TEST_CASE("every fault of a way is told at its place") {
  const auto faults = [](const std::string& way) { return faults_of(read(ways("[" + way + "]"))); };
  using Lines = std::vector<std::string>;
  const std::string at = " at /establishment/alternatives/0";
  CHECK(faults("{}") == Lines{"missing key" + at + "/name"});
  CHECK(faults(R"({"name": " "})") == Lines{"out of range" + at + "/name"});
  CHECK(faults(R"({"from": "plant-600"})") == Lines{"unknown name" + at + "/from"});
  CHECK(faults(R"({"name": "a", "methods": ["fire"]})") ==
        Lines{"unknown name" + at + "/methods/0"});
  CHECK(faults(R"({"name": "a", "methods": ["none", "burn"]})") ==
        Lines{"contradiction" + at + "/methods"});
  CHECK(faults(R"({"name": "a", "methods": ["burn", "burn"]})") ==
        Lines{"contradiction" + at + "/methods/1"});
  CHECK(faults(R"({"name": "a", "years_gained": 11})") ==
        Lines{"out of range" + at + "/years_gained"});
  CHECK(faults(R"({"name": "a", "site_index_shift_ft": -30, "planted_tpa": 99})") ==
        Lines{"out of range" + at + "/planted_tpa"});
  CHECK(faults(R"({"name": "a", "precommercial_thinning": {"age_yr": 4, "to_tpa": 600}})") ==
        Lines{"contradiction" + at + "/precommercial_thinning/to_tpa"});
  CHECK(faults(R"({"name": "a", "planted_tpa": 3000,
                   "precommercial_thinning": {"age_yr": 12, "to_tpa": 600}})") ==
        Lines{"contradiction" + at + "/precommercial_thinning/age_yr"});
  CHECK(faults(R"({"name": "a", "planted_tpa": 3000, "precommercial_thinning": {"age_yr": 4}})") ==
        Lines{"missing key" + at + "/precommercial_thinning/to_tpa"});
}

TEST_CASE("a shift that leaves the range of site indexes is refused") {
  const Json poor = with(bare_land(), "/stand/site_index_ft", 40);
  CHECK(faults_of(read(ways(R"([{"name": "a", "site_index_shift_ft": -11}])", poor))) ==
        std::vector<std::string>{
            "out of range at /establishment/alternatives/0/site_index_shift_ft"});
  CHECK(read(ways(R"([{"name": "a", "site_index_shift_ft": -10}])", poor)));
}

TEST_CASE("a site varied with a way in use stays within the range of sites") {
  Json json = ways(R"([{"name": "poorer", "site_index_shift_ft": -5}])");
  json["establishment"]["use"] = "poorer";
  const auto from = [&](double site) {
    json["vary"]["one_at_a_time"]["site_index_ft"] = Json::array({site, 70});
    return faults_of(read(json));
  };
  CHECK(from(35).empty());
  CHECK(from(34.9) ==
        std::vector<std::string>{"out of range at /vary/one_at_a_time/site_index_ft/0"});
}

TEST_CASE("two ways of one name are a contradiction") {
  CHECK(faults_of(read(ways(R"([{"from": "natural"}, {"from": "natural"}])"))) ==
        std::vector<std::string>{"contradiction at /establishment/alternatives/1"});
}

TEST_CASE("on a yield table a way has costs and methods and no response") {
  CHECK(read(ways(R"([{"name": "a", "methods": ["burn"],
      "practices": [{"what": "burn", "age_yr": 0, "usd_ac": 38}]}])",
                  on_yield_table())));
  CHECK(faults_of(read(
            ways(R"([{"name": "a", "years_gained": 1, "planted_tpa": 500}])", on_yield_table()))) ==
        std::vector<std::string>{"contradiction at /establishment/alternatives/0/years_gained",
                                 "contradiction at /establishment/alternatives/0/planted_tpa"});
  CHECK(faults_of(read(with(on_yield_table(), "/establishment", Json::object()))) ==
        std::vector<std::string>{"missing key at /establishment/alternatives"});
  CHECK(faults_of(read(with(on_tabled_regimes(), "/establishment", Json::object()))) ==
        std::vector<std::string>{"contradiction at /establishment"});
}

TEST_CASE("a stated regime may not cut before the young stand of the way in use is thinned") {
  Json json = ways(R"([{"from": "natural-thinned-young", "name": "wild"}])");
  json["establishment"]["use"] = "wild";
  json["regimes"] = Json::parse(R"([{"name": "early", "final_harvest_age_yr": 30,
    "thinnings": [{"age_yr": 4, "removal_fraction": 0.3}]}])");
  CHECK(faults_of(read(json)) == std::vector<std::string>{"contradiction at /establishment/use"});
  json["regimes"][0]["thinnings"][0]["age_yr"] = 15;
  CHECK(read(json));
}

}  // namespace staddle::scenario_tests
