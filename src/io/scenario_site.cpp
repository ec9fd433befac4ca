// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "io/number_text.h"
#include "io/scenario_blocks.h"
#include "staddle/io/model_library.h"

namespace staddle {
namespace {

constexpr Option site_rows[] = {
    {.pointer = "/site", .meaning = "what is known of the ground", .allowed = kinds::object},
    {.pointer = "/site/soil",
     .meaning = "topsoil",
     .allowed = kinds::text,
     .choices = "sand|loam|clay"},
    {.pointer = "/site/drainage",
     .meaning = "how wet it is",
     .allowed = kinds::text,
     .choices = "dry|moist|wet"},
    {.pointer = "/site/indicator_plants",
     .meaning = "plants seen, from a closed list",
     .allowed = kinds::list},
    {.pointer = "/site/indicator_plants/#", .meaning = "a plant", .allowed = kinds::text},
    {.pointer = "/site/month_of_cut",
     .meaning = "month in which the old stand is cut",
     .allowed = kinds::whole,
     .range = from_to(1, 12)},
    {.pointer = "/site/wet_site_statement",
     .meaning = "what the owner says of wet ground",
     .allowed = kinds::text},
};

void read_plants(ScenarioReading& reading, const Place& list, SiteFacts& site) {
  const std::vector<std::string>& known = known_indicator_plants();
  const std::vector<IndicatorPlant>& plants = built_in_indicator_plants();
  for (const Place& place : list.items()) {
    const auto name = place.text();
    if (!name) continue;
    const auto found = std::find(known.begin(), known.end(), *name);
    if (found == known.end()) {
      std::string names;
      for (const std::string& plant : known) names += (names.empty() ? "" : ", ") + plant;
      reading.fault(place, FaultCode::unknown_name,
                    "found " + quoted_text(*name) + "; the list knows " + names,
                    did_you_mean(nearest_name(*name, known)));
    }
    site.indicator_plants.push_back(*name);
    if (found == known.end()) continue;
    const IndicatorPlant& plant = plants[static_cast<std::size_t>(found - known.begin())];
    const bool sand = plant.indicates == "deep sand";
    (sand ? site.deep_sand_plants : site.wet_flatwoods_plants).push_back(*name);
  }
}

void read_site(ScenarioReading& reading, Scenario& scenario) {
  const Place place = reading.root["site"];
  SiteFacts& site = scenario.site;
  using Soil = SiteFacts::Soil;
  using Drainage = SiteFacts::Drainage;
  if (const auto soil = place["soil"].text()) {
    site.soil = *soil == "sand" ? Soil::sand : *soil == "loam" ? Soil::loam : Soil::clay;
  }
  if (const auto drainage = place["drainage"].text()) {
    site.drainage = *drainage == "dry"     ? Drainage::dry
                    : *drainage == "moist" ? Drainage::moist
                                           : Drainage::wet;
  }
  site.month_of_cut = place["month_of_cut"].whole();
  site.wet_site_statement = place["wet_site_statement"].text_or_empty();
  read_plants(reading, place["indicator_plants"], site);
}

}  // namespace

ScenarioBlock site_block() { return {site_rows, {}, read_site}; }

}  // namespace staddle
