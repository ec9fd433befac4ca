// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <numeric>

#include "io/model_head.h"
#include "io/model_readers.h"
#include "io/option_check.h"
#include "io/place.h"
#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

using kinds::number;
using kinds::text;

constexpr Option own_of_perils[] = {
    {.pointer = "/mark", .meaning = "what the numbers rest on", .allowed = text, .required = true},
    {.pointer = "/source", .meaning = "publications", .allowed = text, .required = true},
    {.pointer = "/recovery_yr",
     .meaning = "years until a thinned stand is firm again",
     .allowed = kinds::object,
     .required = true},
    {.pointer = "/recovery_yr/value",
     .meaning = "years",
     .unit = "years",
     .allowed = number,
     .range = from_to(1, 20),
     .required = true},
    {.pointer = "/recovery_yr/mark",
     .meaning = "what it rests on",
     .allowed = text,
     .required = true},
    {.pointer = "/perils",
     .meaning = "the perils",
     .allowed = kinds::list,
     .least_items = 1,
     .required = true},
    {.pointer = "/perils/#", .meaning = "a peril", .allowed = kinds::object},
    {.pointer = "/perils/#/id",
     .meaning = "the id that zones name",
     .allowed = text,
     .required = true},
    {.pointer = "/perils/#/name", .meaning = "name", .allowed = text, .required = true},
    {.pointer = "/perils/#/hurricane",
     .meaning = "whether it is a hurricane",
     .allowed = kinds::boolean,
     .required = true},
    {.pointer = "/perils/#/wind",
     .meaning = "wind, or ice",
     .allowed = kinds::boolean,
     .required = true},
    {.pointer = "/perils/#/base_damage_share",
     .meaning = "share destroyed at the reference",
     .allowed = number,
     .range = between(0, 1),
     .required = true},
    {.pointer = "/perils/#/height_slope_per_10ft",
     .meaning = "log-odds per 10 ft",
     .allowed = number,
     .range = from_to(-10, 10),
     .required = true},
    {.pointer = "/perils/#/reference_height_ft",
     .meaning = "height of the reference",
     .unit = "ft",
     .allowed = number,
     .range = above_to(0, 200),
     .required = true},
    {.pointer = "/perils/#/slenderness_slope_per_10",
     .meaning = "log-odds per 10",
     .allowed = number,
     .range = from_to(-10, 10),
     .required = true},
    {.pointer = "/perils/#/thinning_odds_ratio",
     .meaning = "half removed, first year",
     .allowed = number,
     .range = above_to(0, 100),
     .required = true},
    {.pointer = "/perils/#/salvage_share",
     .meaning = "share of the value salvaged",
     .allowed = number,
     .range = from_to(0, 1),
     .required = true},
    {.pointer = "/perils/#/cleanup_usd_ac",
     .meaning = "clean-up",
     .unit = "$/ac",
     .allowed = number,
     .range = from_to(0, 1e5),
     .required = true},
    {.pointer = "/species_log_odds",
     .meaning = "what a species adds",
     .allowed = kinds::list,
     .least_items = 3,
     .most_items = 3,
     .required = true},
    {.pointer = "/species_log_odds/#", .meaning = "a species", .allowed = kinds::object},
    {.pointer = "/species_log_odds/#/species",
     .meaning = "species",
     .allowed = text,
     .choices = "loblolly|slash|longleaf",
     .required = true},
    {.pointer = "/species_log_odds/#/wind",
     .meaning = "log-odds",
     .allowed = number,
     .range = from_to(-10, 10),
     .required = true},
    {.pointer = "/species_log_odds/#/ice",
     .meaning = "log-odds",
     .allowed = number,
     .range = from_to(-10, 10),
     .required = true},
    {.pointer = "/species_log_odds/#/mark",
     .meaning = "what they rest on",
     .allowed = text,
     .required = true},
};
constexpr auto peril_options = with_model_head("staddle-perils/1", own_of_perils);

constexpr Option own_of_zones[] = {
    {.pointer = "/mark", .meaning = "what the numbers rest on", .allowed = text, .required = true},
    {.pointer = "/source", .meaning = "publications", .allowed = text, .required = true},
    {.pointer = "/zones",
     .meaning = "the zones",
     .allowed = kinds::list,
     .least_items = 1,
     .required = true},
    {.pointer = "/zones/#", .meaning = "a zone", .allowed = kinds::object},
    {.pointer = "/zones/#/id",
     .meaning = "the id that scenarios name",
     .allowed = text,
     .required = true},
    {.pointer = "/zones/#/where", .meaning = "where it lies", .allowed = text, .required = true},
    {.pointer = "/zones/#/annual_probability",
     .meaning = "chances at a point, by peril",
     .allowed = kinds::object,
     .required = true},
    {.pointer = "/zones/#/annual_probability/*",
     .meaning = "chance",
     .unit = "per year",
     .allowed = number,
     .range = from_to(0, 1)},
};
constexpr auto zone_options = with_model_head("staddle-storm-zones/1", own_of_zones);

Species species_of(const std::string& name) {
  if (name == "slash") return Species::slash;
  return name == "longleaf" ? Species::longleaf : Species::loblolly;
}

Peril peril_at(const Place& place) {
  LogisticShare share;
  share.base_damage_share = place["base_damage_share"].number_or_zero();
  share.reference_height = feet(place["reference_height_ft"].number_or_zero());
  share.height_slope_per_10ft = place["height_slope_per_10ft"].number_or_zero();
  share.slenderness_slope_per_10 = place["slenderness_slope_per_10"].number_or_zero();
  share.thinning_odds_ratio = place["thinning_odds_ratio"].number_or_zero();
  share.wind = place["wind"].boolean().value_or(true);
  Peril peril;
  peril.name = place["name"].text_or_empty();
  peril.logistic = share;
  peril.salvage_share = place["salvage_share"].number_or_zero();
  peril.cleanup = dollars_per_acre(place["cleanup_usd_ac"].number_or_zero());
  peril.hurricane = place["hurricane"].boolean().value_or(false);
  return peril;
}

void report_repeated(const Place& place, const std::vector<std::string>& names, FaultList& faults) {
  if (std::find(names.begin(), names.end(), place.text_or_empty()) == names.end()) return;
  faults.add(place.order(), FaultCode::repeated_key, place.pointer(), "this name stands twice");
}

}  // namespace

Result<PerilCatalogue> read_perils(const std::string& text, const std::string& file) {
  FaultList faults(file);
  auto tree = json::parse(text, faults);
  if (!tree) return faults.in_file_order();
  check_values(*tree, peril_options, faults);
  const Place root(&*tree, "");
  PerilCatalogue catalogue;
  for (const Place& place : root["perils"].items()) {
    report_repeated(place["id"], catalogue.ids, faults);
    catalogue.ids.push_back(place["id"].text_or_empty());
    catalogue.perils.push_back(peril_at(place));
  }
  std::vector<std::string> names;
  for (const Place& place : root["species_log_odds"].items()) {
    report_repeated(place["species"], names, faults);
    names.push_back(place["species"].text_or_empty());
    catalogue.species.push_back(
        {species_of(names.back()), place["wind"].number_or_zero(), place["ice"].number_or_zero()});
  }
  catalogue.recovery_yr = root["recovery_yr"]["value"].number_or_zero();
  catalogue.source = root["source"].text_or_empty();
  if (!faults.empty()) return faults.in_file_order();
  return catalogue;
}

Result<std::vector<StormZone>> read_storm_zones(const std::string& text, const std::string& file,
                                                const PerilCatalogue& catalogue) {
  FaultList faults(file);
  auto tree = json::parse(text, faults);
  if (!tree) return faults.in_file_order();
  check_values(*tree, zone_options, faults);
  const Place root(&*tree, "");
  std::vector<StormZone> zones;
  std::vector<std::string> ids;
  for (const Place& place : root["zones"].items()) {
    report_repeated(place["id"], ids, faults);
    ids.push_back(place["id"].text_or_empty());
    StormZone zone{ids.back(), place["where"].text_or_empty(), {}, root["source"].text_or_empty()};
    double sum = 0;
    const Place chances = place["annual_probability"];
    for (const std::string& id : chances.keys()) {
      const auto known = std::find(catalogue.ids.begin(), catalogue.ids.end(), id);
      if (known == catalogue.ids.end()) {
        faults.add(chances[id].order(), FaultCode::unknown_name, chances[id].pointer(),
                   "there is no such peril", did_you_mean(nearest_name(id, catalogue.ids)));
        continue;
      }
      Peril peril = catalogue.perils[static_cast<std::size_t>(known - catalogue.ids.begin())];
      peril.annual_probability = chances[id].number_or_zero();
      sum += peril.annual_probability;
      zone.perils.push_back(peril);
    }
    if (sum > 1 + tolerance::limit_slack) {
      faults.add(chances.order(), FaultCode::contradiction, chances.pointer(),
                 "the chances of one year sum to more than 1");
    }
    zones.push_back(std::move(zone));
  }
  if (!faults.empty()) return faults.in_file_order();
  return zones;
}

}  // namespace staddle
