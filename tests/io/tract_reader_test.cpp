// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/tract_reader.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>

#include "io/scenario_fixture.h"
#include "support/files.h"

namespace staddle {
namespace {

using scenario_tests::Json;
using scenario_tests::with;
using scenario_tests::without;

Json tract() {
  return Json::parse(R"({"format": "staddle-tract/1", "title": "Tract",
    "economics": {"real_discount_rate": 0.05, "establishment_usd_ac": 350,
      "stumpage_usd_per_ton": {"pulpwood": 7, "chip_n_saw": 18, "sawtimber": 25},
      "after_harvest": "best"},
    "stands": [
      {"name": "A", "acres": 40, "group": "g", "stand": {"model": "loblolly-planted-coastal",
        "site_index_ft": 70, "planted_tpa": 600, "age_yr": 15, "tpa": 500,
        "basal_area_ft2_ac": 120}},
      {"name": "B", "acres": 30, "stand": {"model": "loblolly-planted-coastal",
        "site_index_ft": 65, "planted_tpa": 500}}],
    "plan": {"years": 20, "period_yr": 5}})");
}

const std::string table =
    "name,acres,group,model,site_index_ft,planted_tpa,age_yr,tpa,basal_area_ft2_ac\n"
    "A,40,g,loblolly-planted-coastal,70,600,15,500,120\n"
    "B,30,,loblolly-planted-coastal,65,500,,,\n";
const std::string wrong_table =
    "name,acres,group,model,site_index_ft,planted_tpa,age_yr,tpa,basal_area_ft2_ac\n"
    "A,x,g,loblolly-planted-coastal,170,600,15,500,\n"
    "A,30,,loblolly-planted-costal,65,500,,,\n"
    "C,30\n";

Result<std::string> load_beside(const std::string& name) {
  if (name == "stands.csv") return table;
  if (name == "wrong.csv") return wrong_table;
  const auto& known = scenario_tests::table_files();
  if (known.contains(name)) return known.at(name);
  return Faults{{FaultCode::unreadable, name, "", "there is no such file", ""}};
}

Result<TractFile> read_whole(const Json& tract) {
  return read_tract(tract.dump(), "tract.json", load_beside);
}

TractFile sound(const Json& tract) {
  Result<TractFile> result = read_whole(tract);
  if (!result) {
    for (const Fault& fault : result.error()) UNSCOPED_INFO(to_line(fault));
  }
  REQUIRE(result);
  return std::move(result).value();
}

std::vector<std::string> places_of(const Json& tract) {
  const Result<TractFile> result = read_whole(tract);
  std::vector<std::string> places;
  if (result) return places;
  for (const Fault& fault : result.error()) places.push_back(fault.file + ": " + fault.place);
  return places;
}

void check_one_fault(const Json& tract, const std::string& place, FaultCode code) {
  const Result<TractFile> result = read_whole(tract);
  CAPTURE(place);
  REQUIRE_FALSE(result);
  for (const Fault& fault : result.error()) UNSCOPED_INFO(to_line(fault));
  REQUIRE(result.error().size() == 1);
  CHECK(result.error()[0].place == place);
  CHECK(result.error()[0].code == code);
}

TEST_CASE("a stand has what the tract shares and bare land ignores a shared successor") {
  const TractFile file = sound(tract());
  REQUIRE(file.stands.size() == 2);
  CHECK(file.stands[0].scenario.title == "A");
  CHECK(file.stands[0].group == "g");
  CHECK(file.stands[0].scenario.after_harvest.kind == AfterHarvest::Kind::best);
  CHECK(file.stands[0].scenario.costs.establishment == dollars_per_acre(350));
  CHECK_FALSE(file.stands[1].scenario.is_standing());
  CHECK(file.stands[1].scenario.area == acres(30));
  CHECK(file.plan.years == 20);
  CHECK(file.plan.period_yr == 5);
  CHECK_FALSE(file.plan.whole_stands);
}

TEST_CASE("a table of stands reads like the same stands in the file") {
  Json other = without(tract(), "/stands");
  other["stands_csv"] = "stands.csv";
  const TractFile inlined = sound(tract());
  const TractFile from_table = sound(other);
  REQUIRE(from_table.stands.size() == 2);
  for (std::size_t i = 0; i < 2; ++i) {
    const Scenario &a = inlined.stands[i].scenario, &b = from_table.stands[i].scenario;
    CHECK(a.title == b.title);
    CHECK(a.area == b.area);
    CHECK(inlined.stands[i].group == from_table.stands[i].group);
    CHECK(a.stand.site_index == b.stand.site_index);
    CHECK(a.stand.planted == b.stand.planted);
    CHECK(a.is_standing() == b.is_standing());
  }
  CHECK(from_table.stands[0].scenario.stand.standing->basal_area == square_feet_per_acre(120));
}

TEST_CASE("an override replaces the keys that it names at any depth and no others") {
  Json file = tract();
  file["decisions"] = Json::parse(R"({"max_thinnings": 1, "guards": {"min_height_ft": 45}})");
  file["storm"] = Json::parse(R"({"zone": "coast", "species": "slash"})");
  file["stands"][0]["economics"] = Json::parse(
      R"({"stumpage_usd_per_ton": {"pulpwood": 9}, "annual_cost_usd_ac": 4,
          "after_harvest": 800})");
  file["stands"][0]["decisions"] = Json::parse(R"({"guards": {"min_qmd_in": null}})");
  file["stands"][0]["storm"] = Json::parse(
      R"({"perils": [{"name": "hail", "annual_probability": 0.01, "damage_share": 0.5}]})");
  const TractFile read = sound(file);
  const Scenario &a = read.stands[0].scenario, &b = read.stands[1].scenario;
  CHECK(a.prices[2].stumpage == dollars_per_ton(9));
  CHECK(a.prices[0].stumpage == dollars_per_ton(25));
  CHECK(b.prices[2].stumpage == dollars_per_ton(7));
  CHECK(a.costs.annual_cost == dollars_per_acre(4));
  CHECK(b.costs.annual_cost == dollars_per_acre(8));
  CHECK(a.after_harvest.kind == AfterHarvest::Kind::land_price);
  CHECK(a.lattice.max_thinnings == 1);
  CHECK_FALSE(a.lattice.guards.min_qmd);
  CHECK(a.lattice.guards.min_height == feet(45));
  CHECK(b.lattice.guards.min_qmd == inches(6));
  CHECK(a.hazard.zone == "own");
  CHECK(a.hazard.perils.size() == 1);
  CHECK(b.hazard.zone == "coast");
}

TEST_CASE("every limit of a plan is read") {
  Json file = tract();
  file["plan"] = Json::parse(R"({"years": 20, "period_yr": 5,
    "income_floor_usd": [{"from_year": 3, "to_year": 7, "per_year": 1000}],
    "income_max_drop_fraction": 0.2, "final_harvest_acres_max_per_period": 25,
    "group_final_harvest_acres_max_per_period": 20,
    "tons": [{"product": "sawtimber", "min_per_period": 10, "max_per_period": 900},
             {"product": "all", "max_change_fraction": 0.3}],
    "open_stand": {"basal_area_below_ft2_ac": 70, "acres_min": 12, "from_year": 6},
    "ending_value_min_fraction": 1, "establishment_usd_max_per_period": 8000,
    "whole_stands": true})");
  const TractPlan plan = sound(file).plan;
  REQUIRE(plan.income_floors.size() == 1);
  CHECK(plan.income_floors[0].from_year == 3);
  CHECK(plan.income_floors[0].to_year == 7);
  CHECK(plan.income_floors[0].per_year == dollars(1000));
  CHECK(plan.income_max_drop_fraction == 0.2);
  CHECK(plan.final_harvest_acres_max_per_period == acres(25));
  CHECK(plan.group_final_harvest_acres_max_per_period == acres(20));
  REQUIRE(plan.tons.size() == 2);
  CHECK(plan.tons[0].product == "sawtimber");
  CHECK(plan.tons[0].min_per_period == tons(10));
  CHECK(plan.tons[0].max_per_period == tons(900));
  CHECK_FALSE(plan.tons[0].max_change_fraction);
  CHECK(plan.tons[1].max_change_fraction == 0.3);
  CHECK(plan.open_stand->basal_area_below == square_feet_per_acre(70));
  CHECK(plan.open_stand->acres_min == acres(12));
  CHECK(plan.open_stand->from_year == 6);
  CHECK(plan.ending_value_min_fraction == 1.0);
  CHECK(plan.establishment_max_per_period == dollars(8000));
  CHECK(plan.whole_stands);
}

TEST_CASE("defaults of shared blocks are listed once and those of a stand at the stand") {
  const TractFile file = sound(tract());
  const auto count = [&](const std::string& pointer) {
    return std::count_if(file.assumed.begin(), file.assumed.end(),
                         [&](const Assumption& assumed) { return assumed.pointer == pointer; });
  };
  CHECK(count("/economics/annual_cost_usd_ac") == 1);
  CHECK(count("/decisions/max_thinnings") == 1);
  CHECK(count("/plan/whole_stands") == 1);
  CHECK(count("/stands/0/stand/live_crown_ratio") == 1);
  CHECK(count("/ready/age_yr/due") == 0);
}

TEST_CASE("all faults of a tract come at once in the order of the file") {
  Json file = tract();
  file["economics"]["real_discount_rate"] = 2;
  file["economics"]["sale_fee"] = 0.1;
  file["stands"][0]["stand"]["site_index_ft"] = 20;
  file["stands"][0]["economics"] = Json::parse(R"({"stumpage_usd_per_ton": {"veneer": 9}})");
  file["stands"][1]["name"] = "A";
  file["stands"][1]["economics"] = Json::parse(R"({"after_harvest": "replant"})");
  file["plan"]["period_yr"] = 3;
  file["plan"]["income_floors"] = Json::array();
  CHECK(places_of(file) ==
        std::vector<std::string>{
            "tract.json: /economics/real_discount_rate", "tract.json: /economics/sale_fee",
            "tract.json: /stands/0/stand/site_index_ft",
            "tract.json: /stands/0/economics/stumpage_usd_per_ton/veneer",
            "tract.json: /stands/1/name", "tract.json: /stands/1/economics/after_harvest",
            "tract.json: /plan/period_yr", "tract.json: /plan/income_floors"});
}

TEST_CASE("faults of a table of stands are told by line and column") {
  Json file = without(tract(), "/stands");
  file["stands_csv"] = "wrong.csv";
  CHECK(places_of(file) ==
        std::vector<std::string>{
            "wrong.csv: line 2, column acres", "wrong.csv: line 2, column basal_area_ft2_ac",
            "wrong.csv: line 2, column site_index_ft", "wrong.csv: line 3, column name",
            "wrong.csv: line 3, column model", "wrong.csv: line 4"});
  file["stands_csv"] = "gone.csv";
  check_one_fault(file, "/stands_csv", FaultCode::unreadable);
}

TEST_CASE("a fault of a shared block is told once however many stands have it") {
  Json file = tract();
  file["stands"][1]["stand"]["age_yr"] = 20;
  file["stands"][1]["stand"]["tpa"] = 300;
  file["stands"][1]["stand"]["basal_area_ft2_ac"] = 90;
  check_one_fault(without(file, "/economics/stumpage_usd_per_ton/pulpwood"),
                  "/economics/stumpage_usd_per_ton/pulpwood", FaultCode::missing_key);
  check_one_fault(with(file, "/economics/stumpage_usd_per_ton/veneer", 5),
                  "/economics/stumpage_usd_per_ton/veneer", FaultCode::unknown_name);
  check_one_fault(with(file, "/storm", Json::parse(R"({"zone": "mars"})")), "/storm/zone",
                  FaultCode::unknown_name);
}

TEST_CASE("a stand on a yield table takes the prices of its own products from the shared ones") {
  Json file = tract();
  file["economics"]["stumpage_usd_per_ton"]["logs"] = 30;
  file["stands"][1]["stand"] = Json::parse(R"({"yield_table": "table.csv"})");
  file["economics"]["stumpage_usd_per_ton"]["chips"] = 5;
  CHECK(places_of(file) ==
        std::vector<std::string>{"tract.json: /economics/stumpage_usd_per_ton/pulp",
                                 "tract.json: /economics/stumpage_usd_per_ton/chips"});
}

TEST_CASE("stands are given once in the file or in a table and have names of their own") {
  check_one_fault(without(tract(), "/stands"), "/stands", FaultCode::missing_key);
  check_one_fault(with(tract(), "/stands_csv", "stands.csv"), "/stands_csv",
                  FaultCode::contradiction);
  check_one_fault(with(tract(), "/stands/1/name", "A"), "/stands/1/name", FaultCode::repeated_key);
  Json of_tables = tract();
  of_tables["stands"][1]["stand"] = scenario_tests::on_tabled_regimes()["stand"];
  const auto places = places_of(of_tables);
  CHECK(std::count(places.begin(), places.end(), "tract.json: /stands/1/stand/yield_tables") == 1);
}

TEST_CASE("limits that cannot be meant are refused") {
  const auto check = [](const std::string& key, const Json& value, const std::string& place,
                        FaultCode code) {
    Json file = tract();
    file["plan"][key] = value;
    check_one_fault(file, "/plan/" + place, code);
  };
  check("period_yr", 7, "period_yr", FaultCode::contradiction);
  check("years", 300, "years", FaultCode::out_of_range);
  check("income_floor_usd", Json::parse(R"([{"from_year": 5, "to_year": 4, "per_year": 1}])"),
        "income_floor_usd/0/to_year", FaultCode::out_of_range);
  check("income_floor_usd", Json::parse(R"([{"from_year": 5, "to_year": 21, "per_year": 1}])"),
        "income_floor_usd/0/to_year", FaultCode::out_of_range);
  check("tons", Json::parse(R"([{"product": "saw", "min_per_period": 1}])"), "tons/0/product",
        FaultCode::unknown_name);
  check("tons", Json::parse(R"([{"product": "all"}])"), "tons/0", FaultCode::missing_key);
  check("tons", Json::parse(R"([{"product": "all", "min_per_period": 5, "max_per_period": 4}])"),
        "tons/0", FaultCode::contradiction);
  check("open_stand", Json::parse(R"({"basal_area_below_ft2_ac": 50, "acres_min": 1,
                                      "from_year": 25})"),
        "open_stand/from_year", FaultCode::out_of_range);
  check("income_max_drop_fraction", 1, "income_max_drop_fraction", FaultCode::out_of_range);
  Json without_groups = without(tract(), "/stands/0/group");
  without_groups["plan"]["group_final_harvest_acres_max_per_period"] = 5;
  check_one_fault(without_groups, "/plan/group_final_harvest_acres_max_per_period",
                  FaultCode::contradiction);
}

TEST_CASE("the problem of a tract has its stands and what follows them") {
  const TractProblem problem = make_tract_problem(sound(tract()));
  REQUIRE(problem.stands.size() == 2);
  CHECK(problem.stands[0].name == "A");
  CHECK(problem.stands[0].group == "g");
  CHECK(problem.stands[0].problem.acres == acres(40));
  CHECK(problem.stands[0].successor.has_value());
  CHECK(problem.stands[0].after_harvest.kind == LandAfterHarvest::Kind::replant_if_worthwhile);
  CHECK_FALSE(problem.stands[1].successor.has_value());
  CHECK(faults_of(problem).empty());
}

TEST_CASE("every tract that comes with the project is read") {
  std::size_t tracts = 0;
  for (const std::string& name : support::files_in_source_tree("scenarios/tract", ".json")) {
    CAPTURE(name);
    const auto beside = [](const std::string& file) -> Result<std::string> {
      return support::read_file(support::in_source_tree("scenarios/tract/" + file));
    };
    const std::string text = support::read_file(support::in_source_tree("scenarios/tract/" + name));
    if (!says_it_is_a_tract(text)) continue;
    ++tracts;
    const Result<TractFile> file = read_tract(text, name, beside);
    if (!file) {
      for (const Fault& fault : file.error()) UNSCOPED_INFO(to_line(fault));
    }
    CHECK(file);
  }
  CHECK(tracts >= 3);
}

// The one fault of each file in scenarios/invalid_tracts.
const std::map<std::string, std::string>& expected_places() {
  static const std::map<std::string, std::string> expected = {
      {"cap-on-groups-that-are-not.json", "/plan/group_final_harvest_acres_max_per_period"},
      {"floor-after-the-plan.json", "/plan/income_floor_usd/0/to_year"},
      {"limit-misspelt.json", "/plan/income_floor"},
      {"limit-of-no-product.json", "/plan/tons/0/product"},
      {"override-of-a-stand-alone.json", "/stands/0/economics/real_discount_rate"},
      {"period-that-does-not-divide.json", "/plan/period_yr"},
      {"plan-missing.json", "/plan"},
      {"stand-in-a-table.json", "line 4, column basal_area_ft2_ac"},
      {"stands-named-alike.json", "/stands/1/name"},
      {"stands-nowhere.json", "/stands"},
  };
  return expected;
}

TEST_CASE("every file of scenarios/invalid_tracts has the one fault that it was written for") {
  const auto names = support::files_in_source_tree("scenarios/invalid_tracts", ".json");
  REQUIRE(names.size() == expected_places().size());
  for (const std::string& name : names) {
    CAPTURE(name);
    const std::string folder = "scenarios/invalid_tracts/";
    const Result<TractFile> file =
        read_tract(support::read_file(support::in_source_tree(folder + name)), name,
                   [&](const std::string& beside) -> Result<std::string> {
                     return support::read_file(support::in_source_tree(folder + beside));
                   });
    REQUIRE_FALSE(file);
    for (const Fault& fault : file.error()) UNSCOPED_INFO(to_line(fault));
    REQUIRE(file.error().size() == 1);
    CHECK(file.error()[0].place == expected_places().at(name));
  }
}

}  // namespace
}  // namespace staddle
