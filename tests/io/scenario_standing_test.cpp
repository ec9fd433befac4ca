// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>

#include "io/scenario_fixture.h"
#include "staddle/scenario/measured_stand.h"
#include "support/near.h"

namespace staddle {
namespace {

using scenario_tests::bare_land;
using scenario_tests::faults_at;
using scenario_tests::faults_of;
using scenario_tests::Json;
using scenario_tests::on_tabled_regimes;
using scenario_tests::on_yield_table;
using scenario_tests::read;
using scenario_tests::standing_stand;
using scenario_tests::with;
using scenario_tests::without;
using Lines = std::vector<std::string>;

Json on_table(int age_yr) {
  Json scenario = on_yield_table();
  scenario["stand"]["age_yr"] = age_yr;
  scenario["stand"]["tpa"] = 400;
  scenario["stand"]["basal_area_ft2_ac"] = 130;
  return scenario;
}

TEST_CASE("measures of an earlier year are grown to the present and listed") {
  Json scenario = with(standing_stand(), "/calendar_year", 2027);
  scenario["stand"]["measured_calendar_year"] = 2024;
  scenario["stand"]["live_crown_ratio"] = 0.4;
  const auto result = read(scenario);
  REQUIRE(result);
  const Scenario now = *read(with(standing_stand(), "/stand/live_crown_ratio", 0.4));
  const MeasuredStand expected = grown_unthinned(*now.stand.standing, growth_model_of(now.stand),
                                                 recovery_per_yr(now.stand.source), years(3));
  const MeasuredStand& grown = *result->stand.standing;
  CHECK(grown.at == age(20));
  CHECK(grown.trees == expected.trees);
  CHECK(grown.basal_area == expected.basal_area);
  CHECK(grown.live_crown_ratio == expected.live_crown_ratio);
  Lines listed;
  for (const Assumption& assumption : result->assumed) {
    if (assumption.why.find("measured in 2024") != std::string::npos) {
      listed.push_back(assumption.pointer);
    }
  }
  CHECK(listed == Lines{"/stand/age_yr", "/stand/tpa", "/stand/basal_area_ft2_ac",
                        "/stand/live_crown_ratio"});
}

TEST_CASE("measures of the present year stay as they are") {
  Json scenario = with(standing_stand(), "/calendar_year", 2027);
  scenario["stand"]["measured_calendar_year"] = 2027;
  const auto result = read(scenario);
  REQUIRE(result);
  CHECK(result->stand.standing->at == age(17));
  CHECK(result->stand.standing->basal_area == square_feet_per_acre(132));
}

TEST_CASE("regimes are judged by the present age and not by that of the measurement") {
  Json scenario = with(standing_stand(), "/calendar_year", 2027);
  scenario["stand"]["measured_calendar_year"] = 2024;
  scenario["regimes"] = Json::parse(R"([{"name": "hold", "final_harvest_age_yr": 19},
                                        {"name": "now", "final_harvest_age_yr": 20}])");
  CHECK(faults_of(read(scenario)) == Lines{"contradiction at /regimes/0/final_harvest_age_yr"});
}

TEST_CASE("a stand may not be older than 150 years at present") {
  Json scenario = with(standing_stand(), "/calendar_year", 2100);
  scenario["stand"]["measured_calendar_year"] = 2100 - 133;
  CHECK(read(scenario));
  scenario["stand"]["measured_calendar_year"] = 2100 - 134;
  CHECK(faults_of(read(scenario)) == Lines{"out of range at /stand/measured_calendar_year"});
}

TEST_CASE("site index and height agree within half a foot and not beyond") {
  const auto equations = std::get<EquationSet>(read(standing_stand())->stand.source);
  const double height = dominant_height(equations, feet(70), age(17)).in(feet);
  for (const double sign : {-1.0, 1.0}) {
    const auto at = [&](double distance) {
      return read(with(standing_stand(), "/stand/dominant_height_ft", height + sign * distance));
    };
    CHECK(faults_of(at(0.4999)) == Lines{});
    CHECK(at(0.4999)->stand.site_index == feet(70));  // the stated one is used
    CHECK(faults_of(at(0.5001)) == Lines{"contradiction at /stand/dominant_height_ft"});
  }
}

TEST_CASE("a height solves the site index at the age at which it was measured") {
  Json scenario = without(standing_stand(), "/stand/site_index_ft");
  scenario["stand"]["dominant_height_ft"] = 53;
  const auto at_present = read(scenario);
  scenario["calendar_year"] = 2027;
  scenario["stand"]["measured_calendar_year"] = 2022;
  const auto earlier = read(scenario);
  REQUIRE(earlier);
  CHECK(earlier->stand.site_index == at_present->stand.site_index);
  CHECK(earlier->stand.standing->at == age(22));
}

TEST_CASE("a solved site index is held to the range of a stated one") {
  const auto equations = std::get<EquationSet>(read(standing_stand())->stand.source);
  Json scenario = without(standing_stand(), "/stand/site_index_ft");
  const auto with_height_of_site = [&](double site_index) {
    const double height = dominant_height(equations, feet(site_index), age(17)).in(feet);
    return faults_of(read(with(scenario, "/stand/dominant_height_ft", height)));
  };
  const Lines refused{"out of range at /stand/dominant_height_ft"};
  CHECK(with_height_of_site(30.001) == Lines{});
  CHECK(with_height_of_site(29.999) == refused);
  CHECK(with_height_of_site(119.999) == Lines{});
  CHECK(with_height_of_site(120.001) == refused);
}

TEST_CASE("every missing measure of a standing stand is named") {
  for (const std::string key : {"age_yr", "tpa", "basal_area_ft2_ac"}) {
    CAPTURE(key);
    CHECK(faults_of(read(without(standing_stand(), "/stand/" + key))) ==
          Lines{"missing key at /stand/" + key});
  }
  CHECK(faults_of(read(with(bare_land(), "/stand/age_yr", 17))) ==
        Lines{"missing key at /stand/tpa", "missing key at /stand/basal_area_ft2_ac"});
}

TEST_CASE("what only a standing stand has is refused on bare land") {
  const std::vector<std::pair<std::string, Json>> keys = {
      {"dominant_height_ft", 50},
      {"live_crown_ratio", 0.4},
      {"last_thinning", {{"age_yr", 12}, {"removal_fraction", 0.3}}},
      {"other_timber", Json::array()},
      {"measured_calendar_year", 2024}};
  for (const auto& [key, value] : keys) {
    CAPTURE(key);
    CHECK(faults_of(read(with(bare_land(), "/stand/" + key, value))) ==
          Lines{"contradiction at /stand/" + key});
  }
}

TEST_CASE("a last thinning may be of the present year") {
  const auto at = [](int age_yr) {
    return faults_of(read(with(standing_stand(), "/stand/last_thinning",
                               {{"age_yr", age_yr}, {"removal_fraction", 0.3}})));
  };
  CHECK(at(17) == Lines{});
  CHECK(at(18) == Lines{"contradiction at /stand/last_thinning/age_yr"});
}

TEST_CASE("a measured age is within the yield table or a fault") {
  CHECK(faults_of(read(on_table(10))) == Lines{});
  CHECK(faults_of(read(on_table(40))) == Lines{});
  CHECK(faults_of(read(on_table(9))) == Lines{"out of range at /stand/age_yr"});
  CHECK(faults_of(read(on_table(41))) == Lines{"out of range at /stand/age_yr"});
}

TEST_CASE("a measured stand where the table has no basal area is a fault") {
  const auto result =
      read_scenario(on_table(5).dump(), "s.json", [](const std::string&) -> Result<std::string> {
        return std::string(
            "age_yr,dominant_height_ft,tpa,basal_area_ft2_ac,logs_tons_ac,pulp_tons_ac\n"
            "5,10,540,0,0,0\n10,34,540,80,0,30\n20,60,450,145,15,80\n45,92,260,178,120,60\n");
      });
  CHECK(faults_of(result) == Lines{"contradiction at /stand/age_yr"});
}

TEST_CASE("explicit windows beyond the yield table are faults at their end") {
  const auto window = [](const std::string& key, int from, int to) {
    return faults_of(read(with(on_yield_table(), "/decisions/" + key, {from, to})));
  };
  for (const std::string key : {"thinning_age_yr", "final_harvest_age_yr"}) {
    CAPTURE(key);
    CHECK(window(key, 10, 40) == Lines{});
    CHECK(window(key, 9, 40) == Lines{"out of range at /decisions/" + key + "/0"});
    CHECK(window(key, 10, 41) == Lines{"out of range at /decisions/" + key + "/1"});
  }
}

TEST_CASE("what a yield table says itself may not be said beside it") {
  for (const std::string key : {"site_index_ft", "dominant_height_ft", "planted_tpa"}) {
    const Json value = key == "planted_tpa" ? 600 : 60;
    CAPTURE(key);
    CHECK(faults_of(read(with(on_yield_table(), "/stand/" + key, value))) ==
          Lines{"contradiction at /stand/" + key});
    CHECK(faults_of(read(with(on_table(20), "/stand/" + key, value))) ==
          Lines{"contradiction at /stand/" + key});
  }
  CHECK(faults_of(read(with(bare_land(), "/stand/yield_table_options", Json::object()))) ==
        Lines{"contradiction at /stand/yield_table_options"});
  CHECK(faults_of(read(with(on_tabled_regimes(), "/stand/yield_table_options", Json::object()))) ==
        Lines{"contradiction at /stand/yield_table_options"});
}

TEST_CASE("a table that cannot be read leaves the rest of the scenario to be judged") {
  Json scenario = with(on_yield_table(), "/stand/yield_table", "none.csv");
  scenario["acres"] = 0;
  scenario["decisions"] = {{"max_thinnings", 9}};
  CHECK(faults_of(read(scenario)) == Lines{"out of range at /acres",
                                           "unreadable at /stand/yield_table",
                                           "out of range at /decisions/max_thinnings"});
}

TEST_CASE(
    "tables of regimes are for bare land and need rows at their cuts and one set of products") {
  Json standing = on_tabled_regimes();
  standing["stand"]["age_yr"] = 20;
  const Lines faults = faults_of(read(standing));
  CHECK(std::count(faults.begin(), faults.end(), "contradiction at /stand/age_yr") == 1);

  const std::string cut = "/stand/yield_tables/1/thinnings/0";
  CHECK(faults_of(read(with(on_tabled_regimes(), cut + "/age_yr", 21))) ==
        Lines{"contradiction at " + cut + "/age_yr"});
  CHECK(faults_of(read(with(on_tabled_regimes(), cut + "/log_tons_ac", 2))) ==
        Lines{"unknown key at " + cut + "/log_tons_ac"});
  CHECK(faults_of(read(with(on_tabled_regimes(), cut + "/logs_tons_ac", -1))) ==
        Lines{"out of range at " + cut + "/logs_tons_ac"});
  CHECK(faults_of(read(with(on_tabled_regimes(), "/stand/yield_tables/1/name", "unthinned"))) ==
        Lines{"repeated key at /stand/yield_tables/1/name"});
  CHECK(faults_of(read(with(on_tabled_regimes(), "/regimes", Json::array()))) ==
        Lines{"contradiction at /regimes"});
  Json twice = on_tabled_regimes();
  twice["stand"]["yield_tables"][1]["thinnings"].push_back(
      Json{{"age_yr", 20}, {"logs_tons_ac", 1}, {"pulp_tons_ac", 1}});
  CHECK(faults_of(read(twice)) ==
        Lines{"contradiction at /stand/yield_tables/1/thinnings/1/age_yr"});
}

TEST_CASE("a product left out of a tabled cut counts as none of it and is listed") {
  const auto result =
      read(without(on_tabled_regimes(), "/stand/yield_tables/1/thinnings/0/logs_tons_ac"));
  REQUIRE(result);
  CHECK(std::get<std::vector<TabledRegime>>(result->stand.source)[1].thinnings[0].tons_ac ==
        std::vector<double>{0, 22});
  const bool listed =
      std::any_of(result->assumed.begin(), result->assumed.end(), [](const Assumption& assumption) {
        return assumption.pointer == "/stand/yield_tables/1/thinnings/0/logs_tons_ac";
      });
  CHECK(listed);
}

TEST_CASE("chances of perils may sum to 1 and not above") {
  const auto with_chances = [](double a, double b) {
    return faults_of(
        read(with(bare_land(), "/storm/perils",
                  Json{{{"name", "a"}, {"annual_probability", a}, {"damage_share", 1}},
                       {{"name", "b"}, {"annual_probability", b}, {"damage_share", 1}}})));
  };
  CHECK(with_chances(0.4, 0.6) == Lines{});
  CHECK(with_chances(0.4, 0.6 + 1e-8) == Lines{"contradiction at /storm/perils"});
}

TEST_CASE("fee and tax together may take nearly all and not all") {
  Json scenario = with(bare_land(), "/economics/sale_fee_fraction", 0.5);
  CHECK(read(with(scenario, "/economics/harvest_tax_fraction", 0.4999999)));
  CHECK(faults_of(read(with(scenario, "/economics/harvest_tax_fraction", 0.5))) ==
        Lines{"contradiction at /economics/harvest_tax_fraction"});
}

TEST_CASE("a late limit may equal the due one and not pass it whichever way the sign runs") {
  const auto limits = [](const std::string& sign, double due, double late) {
    return faults_of(read(with(bare_land(), "/ready/" + sign, {{"due", due}, {"late", late}})));
  };
  CHECK(limits("age_yr", 15, 15) == Lines{});
  CHECK(limits("age_yr", 15, 14) == Lines{"contradiction at /ready/age_yr/late"});
  CHECK(limits("live_crown_ratio", 0.35, 0.35) == Lines{});
  CHECK(limits("live_crown_ratio", 0.35, 0.36) ==
        Lines{"contradiction at /ready/live_crown_ratio/late"});
}

}  // namespace
}  // namespace staddle
