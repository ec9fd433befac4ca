// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>

#include "io/number_text.h"
#include "io/scenario_blocks.h"
#include "staddle/base/tolerance.h"
#include "staddle/io/model_library.h"

namespace staddle {
namespace {

using kinds::number;
using kinds::text;
constexpr NumberRange slopes = from_to(-10, 10);

constexpr Option storm_rows[] = {
    {.pointer = "/storm",
     .meaning = "the storms that may come",
     .allowed = kinds::object,
     .implied = true},
    {.pointer = "/storm/zone",
     .meaning = "id of a built-in storm zone",
     .allowed = text,
     .default_json = "\"none\""},
    {.pointer = "/storm/perils", .meaning = "the owner's own perils", .allowed = kinds::list},
    {.pointer = "/storm/perils/#", .meaning = "a peril", .allowed = kinds::object},
    {.pointer = "/storm/perils/#/name", .meaning = "its name", .allowed = text, .required = true},
    {.pointer = "/storm/perils/#/annual_probability",
     .meaning = "chance at the stand",
     .unit = "per year",
     .allowed = number,
     .range = from_to(0, 1),
     .required = true},
    {.pointer = "/storm/perils/#/damage_share",
     .meaning = "share of the acres it destroys",
     .allowed = number,
     .range = above_to(0, 1)},
    {.pointer = "/storm/perils/#/base_damage_share",
     .meaning = "the share at the reference height, of sturdy trees, unthinned",
     .allowed = number,
     .range = between(0, 1)},
    {.pointer = "/storm/perils/#/reference_height_ft",
     .meaning = "the reference height",
     .unit = "ft",
     .allowed = number,
     .range = above_to(0, 200)},
    {.pointer = "/storm/perils/#/height_slope_per_10ft",
     .meaning = "log-odds per 10 ft of height",
     .allowed = number,
     .range = slopes,
     .default_json = "0"},
    {.pointer = "/storm/perils/#/slenderness_slope_per_10",
     .meaning = "log-odds per 10 of height over diameter, above 80",
     .allowed = number,
     .range = slopes,
     .default_json = "0"},
    {.pointer = "/storm/perils/#/thinning_odds_ratio",
     .meaning = "odds of a stand of which half was just cut, over those of one not cut",
     .allowed = number,
     .range = above_to(0, 100),
     .default_json = "1"},
    {.pointer = "/storm/perils/#/wind",
     .meaning = "wind (true) or ice (false)",
     .allowed = kinds::boolean},
    {.pointer = "/storm/perils/#/salvage_share",
     .meaning = "share of the timber's value salvaged",
     .allowed = number,
     .range = from_to(0, 1),
     .default_json = "0"},
    {.pointer = "/storm/perils/#/cleanup_usd_ac",
     .meaning = "clean-up of an acre lost",
     .unit = "$/ac",
     .allowed = number,
     .range = from_to(0, 1e5),
     .default_json = "0"},
    {.pointer = "/storm/species",
     .meaning = "species, for how it withstands storms",
     .allowed = text,
     .choices = "loblolly|slash|longleaf",
     .default_json = "\"loblolly\""},
    {.pointer = "/storm/recovery_yr",
     .meaning = "years until a thinned stand is firm again",
     .unit = "years",
     .allowed = number,
     .range = from_to(1, 20),
     .default_json = "5"},
};

// What a peril with a share that depends on the stand may say, and one with a constant
// share may not.
constexpr std::array<std::string_view, 6> logistic_keys = {
    "base_damage_share",        "reference_height_ft", "height_slope_per_10ft",
    "slenderness_slope_per_10", "thinning_odds_ratio", "wind"};

bool has_own_perils(const json::Node& storm) { return storm.find("perils") != nullptr; }

bool has_storms(const json::Node& storm, const json::Node&) {
  const json::Node* zone = storm.find("zone");
  return has_own_perils(storm) || (zone && zone->text != "none");
}

bool is_logistic(const json::Node& peril, const json::Node&) {
  return peril.find("base_damage_share") != nullptr;
}

constexpr DefaultCondition storm_conditions[] = {
    {"/storm/zone",
     [](const json::Node& storm, const json::Node&) { return !has_own_perils(storm); }},
    {"/storm/species", has_storms},
    {"/storm/recovery_yr", has_storms},
    {"/storm/perils/#/height_slope_per_10ft", is_logistic},
    {"/storm/perils/#/slenderness_slope_per_10", is_logistic},
    {"/storm/perils/#/thinning_odds_ratio", is_logistic},
};

Species species_at(const Place& place) {
  if (place.text() == "slash") return Species::slash;
  return place.text() == "longleaf" ? Species::longleaf : Species::loblolly;
}

class StormReader {
 public:
  StormReader(ScenarioReading& reading, Scenario& scenario)
      : reading_(reading), storm_(reading.root["storm"]), scenario_(scenario) {}

  void read() {
    const Place zone = storm_["zone"];
    const Place perils = storm_["perils"];
    if (zone.given() && perils.given()) {
      reading_.fault(zone.order() > perils.order() ? zone : perils, FaultCode::contradiction,
                     "a zone and own perils stand side by side; one of them is allowed");
    }
    species_ = species_at(storm_["species"]);
    const double recovery_yr = storm_["recovery_yr"].number().value_or(1);
    if (perils.is(kinds::list)) {
      scenario_.hazard = {"own", species_, recovery_yr, {}};
      read_perils(perils);
    } else if (const auto id = zone.text()) {
      read_zone(zone, *id, recovery_yr);
    }
    if (scenario_.hazard.active()) require_removals_of_tables();
  }

 private:
  void read_zone(const Place& place, const std::string& id, double recovery_yr) {
    std::vector<std::string> known;
    for (const StormZone& zone : built_in_storm_zones()) {
      known.push_back(zone.id);
      if (zone.id != id) continue;
      scenario_.hazard = hazard_of_zone(zone, species_, recovery_yr);
      return;
    }
    std::string list;
    for (const std::string& name : known) list += (list.empty() ? "" : ", ") + name;
    reading_.fault(place, FaultCode::unknown_name,
                   "there is no storm zone " + quoted_text(id) + "; there are " + list,
                   did_you_mean(nearest_name(id, known)));
  }

  void read_perils(const Place& perils) {
    double sum = 0;
    for (const Place& place : perils.items()) {
      scenario_.hazard.perils.push_back(read_peril(place));
      sum += scenario_.hazard.perils.back().annual_probability;
    }
    if (sum > 1 + tolerance::limit_slack) {
      reading_.fault(perils, FaultCode::contradiction,
                     "the annual probabilities sum to " + number_text(sum) +
                         "; perils exclude each other within a year, so 1 is the most");
    }
  }

  Peril read_peril(const Place& place) {
    Peril peril;
    peril.name = place["name"].text_or_empty();
    peril.annual_probability = place["annual_probability"].number_or_zero();
    peril.salvage_share = place["salvage_share"].number_or_zero();
    peril.cleanup = dollars_per_acre(place["cleanup_usd_ac"].number_or_zero());
    peril.constant_share = place["damage_share"].number_or_zero();
    if (place["damage_share"].given()) {
      refuse_logistic(place);
    } else if (place["base_damage_share"].given()) {
      peril.logistic = read_logistic(place);
    } else if (place.is(kinds::object)) {
      reading_.fault(place, FaultCode::missing_key,
                     "a peril needs damage_share, or base_damage_share and what goes with it");
    }
    return peril;
  }

  void refuse_logistic(const Place& peril) {
    for (const std::string_view key : logistic_keys) {
      if (!peril[key].given()) continue;
      reading_.fault(peril[key], FaultCode::contradiction,
                     "this cannot stand beside damage_share, which is constant");
    }
  }

  LogisticShare read_logistic(const Place& place) {
    LogisticShare share;
    const Place reference = place["reference_height_ft"];
    const Place wind = place["wind"];
    share.base_damage_share = place["base_damage_share"].number_or_zero();
    share.height_slope_per_10ft = place["height_slope_per_10ft"].number_or_zero();
    share.slenderness_slope_per_10 = place["slenderness_slope_per_10"].number_or_zero();
    share.thinning_odds_ratio = place["thinning_odds_ratio"].number().value_or(1);
    share.reference_height = feet(reference.number_or_zero());
    share.wind = wind.boolean().value_or(true);
    share.species_log_odds = species_log_odds(species_, share.wind);
    if (share.height_slope_per_10ft != 0 && !reference.given()) {
      reading_.fault(reference, FaultCode::missing_key,
                     "this key is required where height_slope_per_10ft is not 0");
    }
    if (!wind.given()) {
      reading_.fault(wind, FaultCode::missing_key,
                     "this key is required beside base_damage_share: true for wind, false for ice");
    }
    return share;
  }

  // A cut opens the stand to storms by its removal, which a table need not say
  // otherwise.
  void require_removals_of_tables() {
    for (const Place& table : reading_.root["stand"]["yield_tables"].items()) {
      for (const Place& cut : table["thinnings"].items()) {
        const Place removal = cut["removal_fraction"];
        if (removal.given() || !cut.usable()) continue;
        reading_.fault(removal, FaultCode::missing_key,
                       "this key is required where storms are priced");
      }
    }
  }

  ScenarioReading& reading_;
  const Place storm_;
  Scenario& scenario_;
  Species species_ = Species::loblolly;
};

void read_storm(ScenarioReading& reading, Scenario& scenario) {
  StormReader(reading, scenario).read();
}

}  // namespace

ScenarioBlock storm_block() { return {storm_rows, storm_conditions, read_storm}; }

}  // namespace staddle
