// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>

#include "io/scenario_fixture.h"
#include "support/near.h"

namespace staddle {
namespace {

using scenario_tests::Json;
using scenario_tests::with;
using scenario_tests::without;

// Three factor-10 points of 12 trees and heights, one of 9.
const std::string tally = [] {
  std::string text = "plot,tree_dbh_in,height_ft,live_crown_ratio,crown_width_ft\n";
  for (int plot = 1; plot <= 4; ++plot) {
    for (int tree = 0; tree < (plot == 4 ? 9 : 12); ++tree) {
      text += std::to_string(plot) + ",8,55,0.4,12\n";
    }
  }
  return text;
}();

Json from_plots() {
  Json scenario = with(scenario_tests::standing_stand(), "/stand/cruise",
                       {{"file", "plots.csv"}, {"basal_area_factor", 10}});
  for (const char* key : {"tpa", "basal_area_ft2_ac", "site_index_ft"}) {
    scenario["stand"].erase(key);
  }
  return scenario;
}

Result<Scenario> read_with_plots(const Json& scenario, const std::string& plots = tally) {
  return read_scenario(scenario.dump(), "scenario.json",
                       [&](const std::string& name) -> Result<std::string> {
                         if (name == "plots.csv") return plots;
                         return Faults{{FaultCode::unreadable, name, "", "is not there", ""}};
                       });
}

Faults faults_with_plots(const Json& scenario, const std::string& plots = tally) {
  const Result<Scenario> result = read_with_plots(scenario, plots);
  return result ? Faults{} : result.error();
}

TEST_CASE("plots stand in the place of measured trees and height") {
  const Result<Scenario> scenario = read_with_plots(from_plots());
  if (!scenario) {
    for (const Fault& fault : scenario.error()) UNSCOPED_INFO(to_line(fault));
  }
  REQUIRE(scenario);
  const StandBlock& stand = scenario->stand;
  REQUIRE(stand.standing);
  CHECK(stand.standing->basal_area.in(square_feet_per_acre) == support::within(112.5, 1e-9));
  CHECK(stand.dominant_height->in(feet) == support::within(55, 1e-9));
  CHECK(*stand.standing->live_crown_ratio == support::within(0.4, 1e-12));
  REQUIRE(stand.site_index);
  REQUIRE(stand.plots);
  CHECK(stand.plots->plots == 4);
  CHECK(stand.plots->low->in(square_feet_per_acre) < 112.5);
  CHECK(stand.plots->crown_cover);
}

TEST_CASE("what plots say is listed under what was assumed") {
  const Result<Scenario> scenario = read_with_plots(from_plots());
  REQUIRE(scenario);
  for (const std::string pointer : {"/stand/tpa", "/stand/basal_area_ft2_ac",
                                    "/stand/dominant_height_ft", "/stand/site_index_ft"}) {
    CAPTURE(pointer);
    CHECK(std::any_of(scenario->assumed.begin(), scenario->assumed.end(),
                      [&](const Assumption& assumption) { return assumption.pointer == pointer; }));
  }
}

TEST_CASE("measures beside plots are refused") {
  for (const auto& [pointer, value] :
       std::vector<std::pair<std::string, double>>{{"/stand/tpa", 400},
                                                   {"/stand/basal_area_ft2_ac", 120},
                                                   {"/stand/dominant_height_ft", 55},
                                                   {"/stand/live_crown_ratio", 0.4}}) {
    CAPTURE(pointer);
    const Faults faults = faults_with_plots(with(from_plots(), pointer, value));
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].code == FaultCode::contradiction);
    CHECK(faults[0].place == pointer);
  }
}

TEST_CASE("a site index beside plots is used and asked about where the heights differ") {
  const Result<Scenario> scenario = read_with_plots(with(from_plots(), "/stand/site_index_ft", 60));
  REQUIRE(scenario);
  CHECK(scenario->stand.site_index == feet(60));
  CHECK(scenario->questions.size() == 1);
}

TEST_CASE("plots need one design and a file and an age") {
  CHECK(faults_with_plots(without(from_plots(), "/stand/cruise/basal_area_factor"))[0].place ==
        "/stand/cruise");
  CHECK(faults_with_plots(with(from_plots(), "/stand/cruise/plot_acres", 0.1))[0].code ==
        FaultCode::contradiction);
  CHECK(faults_with_plots(without(from_plots(), "/stand/cruise/file"))[0].code ==
        FaultCode::missing_key);
  const Faults ageless = faults_with_plots(without(from_plots(), "/stand/age_yr"));
  REQUIRE(ageless.size() == 1);
  CHECK(ageless[0].place == "/stand/age_yr");
  CHECK(faults_with_plots(with(from_plots(), "/stand/cruise/file", "other.csv"))[0].code ==
        FaultCode::unreadable);
  CHECK(faults_with_plots(with(from_plots(), "/stand/cruise/factor", 10))[0].code ==
        FaultCode::unknown_key);
}

TEST_CASE("faults of the tally come back with those of the scenario") {
  const Faults faults =
      faults_with_plots(with(from_plots(), "/acres", -1), "plot,tree_dbh_in\n1,8\n1,x\n");
  REQUIRE(faults.size() == 2);
  CHECK(faults[0].place == "/acres");
  CHECK(faults[1].place == "line 3, column tree_dbh_in");
  CHECK(faults[1].file == "plots.csv");
}

TEST_CASE("a tally that makes no stand is refused where it is named") {
  const Faults empty = faults_with_plots(from_plots(), "plot,tree_dbh_in\n1,\n2,\n");
  REQUIRE_FALSE(empty.empty());
  CHECK(empty[0].place == "/stand/cruise/file");
  const Faults low = faults_with_plots(from_plots(), "plot,tree_dbh_in\n1,8\n2,8\n");
  REQUIRE(low.size() == 1);
  CHECK(low[0].place == "/stand/cruise/file");
}

TEST_CASE("plots without heights need a site index") {
  std::string bare = "plot,tree_dbh_in\n";
  for (int i = 0; i < 24; ++i) bare += std::to_string(i % 2) + ",8\n";
  const Faults faults = faults_with_plots(from_plots(), bare);
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].place == "/stand/cruise/file");
  CHECK(read_with_plots(with(from_plots(), "/stand/site_index_ft", 70), bare));
}

}  // namespace
}  // namespace staddle
