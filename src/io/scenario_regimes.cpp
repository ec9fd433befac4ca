// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>

#include "io/number_text.h"
#include "io/ranges.h"
#include "io/scenario_blocks.h"

namespace staddle {
namespace {

using kinds::number;
using ranges::ages;

constexpr Option regimes_rows[] = {
    {.pointer = "/regimes", .meaning = "regimes to price beside the best", .allowed = kinds::list},
    {.pointer = "/regimes/#", .meaning = "a regime", .allowed = kinds::object},
    {.pointer = "/regimes/#/name", .meaning = "its name", .allowed = kinds::text, .required = true},
    {.pointer = "/regimes/#/thinnings",
     .meaning = "its thinnings, by age",
     .allowed = kinds::list,
     .most_items = most_stated_thinnings,
     .default_json = "[]"},
    {.pointer = "/regimes/#/thinnings/#", .meaning = "a thinning", .allowed = kinds::object},
    {.pointer = "/regimes/#/thinnings/#/age_yr",
     .meaning = "its age",
     .unit = "years",
     .allowed = kinds::whole,
     .range = ages,
     .required = true},
    {.pointer = "/regimes/#/thinnings/#/removal_fraction",
     .meaning = "share of the basal area",
     .allowed = number,
     .range = above_to(0, 0.9)},
    {.pointer = "/regimes/#/thinnings/#/residual_basal_area_ft2_ac",
     .meaning = "basal area left",
     .unit = "ft2/ac",
     .allowed = number,
     .range = above_to(0, 400)},
    {.pointer = "/regimes/#/thinnings/#/residual_tpa",
     .meaning = "trees left",
     .unit = "trees/ac",
     .allowed = number,
     .range = above_to(0, 4000)},
    {.pointer = "/regimes/#/final_harvest_age_yr",
     .meaning = "age of the final harvest",
     .unit = "years",
     .allowed = kinds::whole,
     .range = ages,
     .required = true},
};

constexpr std::array<std::string_view, 3> ways_to_say_how_much = {
    "removal_fraction", "residual_basal_area_ft2_ac", "residual_tpa"};

class RegimeReader {
 public:
  RegimeReader(ScenarioReading& reading, const Place& place) : reading_(reading), place_(place) {}

  StatedRegime read() {
    StatedRegime regime;
    regime.name = place_["name"].text_or_empty();
    const Place final_harvest = place_["final_harvest_age_yr"];
    const auto final_age = final_harvest.whole();
    regime.final_harvest = age(final_age.value_or(1));
    std::optional<int> latest;
    for (const Place& thinning : place_["thinnings"].items()) {
      regime.thinnings.push_back(read_thinning(thinning));
      const auto at = thinning["age_yr"].whole();
      if (!at) continue;
      check_order(thinning["age_yr"], *at, latest, final_age);
      check_covered(thinning["age_yr"], *at);
      latest = std::max(latest.value_or(*at), *at);
    }
    if (final_age) check_covered(final_harvest, *final_age);
    return regime;
  }

 private:
  StatedThinning read_thinning(const Place& place) {
    StatedThinning thinning;
    thinning.at = age(place["age_yr"].whole().value_or(1));
    thinning.removal_fraction = place["removal_fraction"].number_or_zero();
    thinning.residual_basal_area =
        square_feet_per_acre(place["residual_basal_area_ft2_ac"].number_or_zero());
    thinning.residual_trees = trees_per_acre(place["residual_tpa"].number_or_zero());
    using By = StatedThinning::By;
    if (place["residual_basal_area_ft2_ac"].given()) thinning.by = By::residual_basal_area;
    if (place["residual_tpa"].given()) thinning.by = By::residual_trees;
    check_one_way(place);
    return thinning;
  }

  void check_one_way(const Place& place) {
    std::optional<Place> first;
    for (const std::string_view key : ways_to_say_how_much) {
      const Place way = place[key];
      if (!way.given()) continue;
      if (first) {
        reading_.fault(way.order() > first->order() ? way : *first, FaultCode::contradiction,
                       "a thinning gives one of removal_fraction, residual_basal_area_ft2_ac "
                       "and residual_tpa; this one gives several");
        return;
      }
      first = way;
    }
    if (first || !place.is(kinds::object)) return;
    reading_.fault(place, FaultCode::missing_key,
                   "a thinning gives one of removal_fraction, residual_basal_area_ft2_ac and "
                   "residual_tpa");
  }

  void check_order(const Place& place, int at, std::optional<int> latest,
                   std::optional<int> final_age) {
    if (latest && at <= *latest) {
      reading_.fault(place, FaultCode::contradiction,
                     "found " + std::to_string(at) + " after a thinning at " +
                         std::to_string(*latest) + "; thinnings stand in the order of their ages");
    }
    if (final_age && at >= *final_age) {
      reading_.fault(place, FaultCode::contradiction,
                     "found " + std::to_string(at) + ", not before the final harvest at " +
                         std::to_string(*final_age));
    }
  }

  void check_covered(const Place& place, int at) {
    const auto present = reading_.present_age;
    if (present && at < *present) {
      reading_.fault(
          place, FaultCode::contradiction,
          "found " + std::to_string(at) + ", before the present age, " + std::to_string(*present));
    } else if (reading_.first_table_age &&
               (at < *reading_.first_table_age || at > *reading_.last_table_age)) {
      reading_.fault(place, FaultCode::out_of_range,
                     "found " + std::to_string(at) + "; the yield table covers ages " +
                         std::to_string(*reading_.first_table_age) + " to " +
                         std::to_string(*reading_.last_table_age));
    }
  }

  ScenarioReading& reading_;
  const Place& place_;
};

// Commands name by these the regime found and the stand that is never cut.
void refuse_reserved_name(ScenarioReading& reading, const Place& name) {
  if (name.text() != "best" && name.text() != "none") return;
  reading.fault(name, FaultCode::contradiction,
                "the names \"best\" and \"none\" are taken: choose another");
}

void read_regimes(ScenarioReading& reading, Scenario& scenario) {
  const Place list = reading.root["regimes"];
  if (reading.tabled_regimes) {
    if (!list.given()) return;
    reading.fault(list, FaultCode::contradiction,
                  "tables of several regimes say what is compared; this belongs to one stand");
    return;
  }
  for (const Place& place : list.items()) {
    StatedRegime regime = RegimeReader(reading, place).read();
    refuse_reserved_name(reading, place["name"]);
    for (const StatedRegime& earlier : scenario.regimes) {
      if (regime.name.empty() || earlier.name != regime.name) continue;
      reading.fault(place["name"], FaultCode::repeated_key,
                    quoted_text(regime.name) + " is the name of an earlier regime too");
      break;
    }
    scenario.regimes.push_back(std::move(regime));
  }
}

}  // namespace

ScenarioBlock regimes_block() { return {regimes_rows, {}, read_regimes}; }

}  // namespace staddle
