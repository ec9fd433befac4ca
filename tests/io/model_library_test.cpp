// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/model_library.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "io/embedded_files.h"
#include "io/model_readers.h"
#include "support/files.h"
#include "support/near.h"

namespace staddle {
namespace {

using Json = nlohmann::ordered_json;
using Lines = std::vector<std::string>;

Json model_file(const std::string& name) {
  return Json::parse(support::read_file(support::in_source_tree("models/" + name)));
}

TEST_CASE("the program carries every data file of models byte for byte") {
  for (const std::string ending : {".json", ".csv"}) {
    for (const std::string& name : support::files_in_source_tree("models", ending)) {
      CAPTURE(name);
      const auto files = embedded_files();
      const auto found = std::find_if(files.begin(), files.end(),
                                      [&](const EmbeddedFile& file) { return file.name == name; });
      REQUIRE(found != files.end());
      CHECK(found->content == support::read_file(support::in_source_tree("models/" + name)));
    }
  }
}

TEST_CASE("both loblolly fits are built in under the names of their files") {
  const auto& sets = built_in_equation_sets();
  REQUIRE(sets.size() == support::files_in_source_tree("models/equations", ".json").size());
  REQUIRE(sets.size() >= 2);
  CHECK(sets[0].id == "loblolly-planted-coastal");
  CHECK(sets[1].id == "loblolly-planted-upland");
  for (const EquationSet& set : sets) {
    CAPTURE(set.id);
    CHECK(model_file("equations/" + set.id + ".json")["id"] == set.id);
    CHECK(set.source.find("Harrison") != std::string::npos);
    CHECK(set.notes.at(0).find("second-hand") != std::string::npos);
    CHECK(set.fitted_age_yr.low == 10);
    CHECK(set.fitted_age_yr.high == 25);
    CHECK(set.fitted_tpa.high == 1000);
    CHECK(set.fitted_site_index_ft.low == 45);
  }
  CHECK(sets[0].total_weight_form == TotalWeightForm::trees_height_basal_area);
  CHECK(sets[1].total_weight_form == TotalWeightForm::height_basal_area);
  CHECK(sets[0].recovery_per_yr == 0.110521);
  CHECK(sets[1].recovery_per_yr == 0.076472);
  CHECK(sets[0].basal_area ==
        std::array<double, 6>{0, -42.689283, 0.367244, 0.659985, 2.012724, 7.703502});
  CHECK(sets[1].merchantable ==
        std::array<double, 5>{-1.007482, 3.931373, -0.518057, -0.048385, 5.660573});
  REQUIRE(sets[0].worked_values.size() == 3);
  CHECK(sets[0].worked_values[2].product_tons_ac == std::vector<double>{47.7, 77.5, 62.3});
}

TEST_CASE("the storm zones are those of the assumed table") {
  struct Row {
    std::string id;
    std::vector<double> chances;  // hurricane moderate, major, local wind, ice
  };
  const std::vector<Row> table = {
      {"coast", {.025, .008, .002, .005}},       {"coast-sheltered", {.0125, .004, .002, .005}},
      {"near-inland", {.018, .003, .002, .010}}, {"inland", {.010, .001, .003, .020}},
      {"ice-belt", {.004, .0002, .004, .035}},   {"none", {}}};
  const auto& zones = built_in_storm_zones();
  REQUIRE(zones.size() == table.size());
  for (std::size_t i = 0; i < zones.size(); ++i) {
    CAPTURE(table[i].id);
    CHECK(zones[i].id == table[i].id);
    REQUIRE(zones[i].perils.size() == table[i].chances.size());
    for (std::size_t k = 0; k < table[i].chances.size(); ++k) {
      CHECK(zones[i].perils[k].annual_probability == table[i].chances[k]);
      CHECK(zones[i].perils[k].hurricane == (k < 2));
      CHECK(zones[i].perils[k].logistic->wind == (k < 3));
    }
  }
  const Peril& ice = zones[0].perils[3];
  CHECK(ice.logistic->base_damage_share == .12);
  CHECK(ice.logistic->height_slope_per_10ft == -.25);
  CHECK(ice.logistic->reference_height == feet(50));
  CHECK(ice.logistic->slenderness_slope_per_10 == .25);
  CHECK(ice.logistic->thinning_odds_ratio == 3.5);
  CHECK(ice.salvage_share == .35);
  CHECK(ice.cleanup == dollars_per_acre(100));
  const Peril& major = zones[0].perils[1];
  CHECK(major.logistic->base_damage_share == .55);
  CHECK(major.salvage_share == .10);
  CHECK(major.cleanup == dollars_per_acre(500));
}

TEST_CASE("a species shifts the log-odds of wind and ice") {
  CHECK(species_log_odds(Species::loblolly, true) == 0);
  CHECK(species_log_odds(Species::loblolly, false) == 0);
  CHECK(species_log_odds(Species::slash, true) == -0.4);
  CHECK(species_log_odds(Species::slash, false) == 0.5);
  CHECK(species_log_odds(Species::longleaf, true) == -0.8);
  CHECK(species_log_odds(Species::longleaf, false) == 0.3);
  const StormZone& zone = built_in_storm_zones().front();
  const Hazard hazard = hazard_of_zone(zone, Species::slash, 7);
  CHECK(hazard.zone == zone.id);
  CHECK(hazard.recovery_yr == 7);
  CHECK(hazard.perils[0].logistic->species_log_odds == -0.4);
  CHECK(hazard.perils[3].logistic->species_log_odds == 0.5);
}

TEST_CASE("every number of storms is marked for what it rests on") {
  const Json perils = model_file("storm/perils.json");
  CHECK(perils["mark"] == "assumption");
  CHECK(model_file("storm/zones.json")["mark"] == "assumption");
  for (const Json& species : perils["species_log_odds"]) {
    CHECK(species["mark"].get<std::string>().find("assumption") != std::string::npos);
  }
}

TEST_CASE("indicator plants speak of deep sand or of wet flatwoods and say why") {
  const auto& names = known_indicator_plants();
  for (const char* name : {"reindeer moss", "prickly pear", "sparkleberry", "scrub oaks",
                           "gallberry", "saw-palmetto", "titi"}) {
    CHECK(std::find(names.begin(), names.end(), name) != names.end());
  }
  for (const IndicatorPlant& plant : built_in_indicator_plants()) {
    CAPTURE(plant.name);
    CHECK_FALSE(plant.mark.empty());
    CHECK((plant.indicates == "deep sand" || plant.indicates == "wet flatwoods"));
  }
}

// Every key of a model file is needed: without it, with a misspelt name, or with a text
// where a number belongs the file is refused. Returns how often that was tried.
template <class Read>
int check_strictness(const Json& file, const Read& read) {
  int tried = 0;
  const Json flat = file.flatten();
  for (auto item = flat.begin(); item != flat.end(); ++item) {
    const Json::json_pointer place(item.key());
    const std::string key = place.back();
    CAPTURE(item.key());
    Json lame = file;
    lame[place] = Json{{"an object", 1}};
    CHECK_FALSE(read(lame.dump()).has_value());
    ++tried;
    if (file[place.parent_pointer()].is_array()) continue;
    Json missing = file;
    missing[place.parent_pointer()].erase(key);
    missing[place.parent_pointer()][key + "_x"] = file[place];
    const auto refused = read(missing.dump());
    CHECK_FALSE(refused.has_value());
  }
  return tried;
}

TEST_CASE(
    "a model file is refused when any of its values is missing or misspelt or of another kind") {
  const Json equations = model_file("equations/loblolly-planted-coastal.json");
  CHECK(read_equation_set(equations.dump(), "e.json").has_value());
  CHECK(check_strictness(equations, [](const std::string& text) {
          return read_equation_set(text, "e.json");
        }) > 50);
  const Json perils = model_file("storm/perils.json");
  const auto catalogue = read_perils(perils.dump(), "p.json");
  REQUIRE(catalogue.has_value());
  CHECK(check_strictness(perils,
                         [](const std::string& text) { return read_perils(text, "p.json"); }) > 40);
  Json zones = model_file("storm/zones.json");
  // The chances of a zone are optional one by one.
  for (Json& zone : zones["zones"]) zone["annual_probability"] = Json::object({{"ice", 0.1}});
  CHECK(check_strictness(zones, [&](const std::string& text) {
          return read_storm_zones(text, "z.json", *catalogue);
        }) > 15);
  CHECK(check_strictness(model_file("site/indicator_plants.json"), [](const std::string& text) {
          return read_indicator_plants(text, "s.json");
        }) > 20);
}

TEST_CASE("model files are refused for a form that is not known and for values that contradict") {
  Json equations = model_file("equations/loblolly-planted-coastal.json");
  equations["total_weight"]["form"] = "height-only";
  const auto form = read_equation_set(equations.dump(), "e.json");
  REQUIRE_FALSE(form);
  CHECK(form.error().front().place == "/total_weight/form");
  equations = model_file("equations/loblolly-planted-coastal.json");
  equations["fitted_range"]["tpa"] = {1000, 100};
  const auto range = read_equation_set(equations.dump(), "e.json");
  REQUIRE_FALSE(range);
  CHECK(range.error().front().place == "/fitted_range/tpa");

  const auto catalogue = read_perils(model_file("storm/perils.json").dump(), "p.json");
  Json zones = model_file("storm/zones.json");
  zones["zones"][0]["annual_probability"]["ice"] = 0.99;
  const auto certain = read_storm_zones(zones.dump(), "z.json", *catalogue);
  REQUIRE_FALSE(certain);
  CHECK(certain.error().front().code == FaultCode::contradiction);
  zones = model_file("storm/zones.json");
  zones["zones"][0]["annual_probability"]["hail"] = 0.1;
  const auto unknown = read_storm_zones(zones.dump(), "z.json", *catalogue);
  REQUIRE_FALSE(unknown);
  CHECK(unknown.error().front().code == FaultCode::unknown_name);
  zones = model_file("storm/zones.json");
  zones["zones"][1]["id"] = "coast";
  CHECK_FALSE(read_storm_zones(zones.dump(), "z.json", *catalogue));
}

}  // namespace
}  // namespace staddle
