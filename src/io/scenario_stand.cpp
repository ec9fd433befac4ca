// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>

#include "io/number_text.h"
#include "io/scenario_blocks.h"
#include "io/scenario_standing.h"
#include "io/scenario_tables.h"
#include "staddle/io/model_library.h"

namespace staddle {
namespace {

constexpr DefaultCondition stand_conditions[] = {
    {"/stand/yield_table_options",
     [](const json::Node& stand, const json::Node&) {
       return stand.find("yield_table") != nullptr;
     }},
};

// What only a standing stand can have.
constexpr std::array<std::string_view, 4> of_standing = {"live_crown_ratio", "last_thinning",
                                                         "other_timber", "measured_calendar_year"};

class StandReader {
 public:
  StandReader(ScenarioReading& reading, StandBlock& block)
      : reading_(reading), stand_(reading.root["stand"]), block_(block) {}

  void read() {
    if (!stand_.is(kinds::object)) return;
    cruise_ = stand_["cruise"].given();
    reading_.standing = describes_standing_stand(reading_.tree);
    if (!reading_.standing) reading_.present_age = 0;
    read_source();
    if (reading_.from_tables) {
      refuse_beside_table();
    } else {
      read_planted();
    }
    if (reading_.standing) {
      read_standing_stand(reading_, stand_, source_known_, block_);
    } else {
      refuse_on_bare_land();
      if (!reading_.from_tables) require_site_index();
    }
    ask_about_site();
  }

 private:
  // ---- where the growth comes from

  void read_source() {
    const Place model = stand_["model"];
    const Place table = stand_["yield_table"];
    const Place tables = stand_["yield_tables"];
    const int sources = model.given() + table.given() + tables.given();
    if (sources == 0) {
      reading_.fault(model, FaultCode::missing_key,
                     "the stand names no source of its growth; one of \"model\", "
                     "\"yield_table\" and \"yield_tables\" is required");
    }
    if (sources > 1) {
      reading_.fault(model.given() && table.given() ? table : tables, FaultCode::contradiction,
                     "the stand names several sources of its growth; one of \"model\", "
                     "\"yield_table\" and \"yield_tables\" is allowed");
    }
    reading_.from_tables = !model.given() && sources > 0;
    reading_.tabled_regimes = !model.given() && !table.given() && tables.given();
    if (sources != 1) return;
    if (model.given()) read_model(model);
    if (table.given()) read_table(table);
    if (tables.given()) {
      source_known_ = read_tabled_regimes(reading_, tables, block_.source);
    }
  }

  void read_model(const Place& model) {
    const auto id = model.text();
    if (!id) return;
    std::vector<std::string> known;
    for (const EquationSet& set : built_in_equation_sets()) {
      known.push_back(set.id);
      if (set.id != *id) continue;
      block_.source = set;
      source_known_ = true;
    }
    if (source_known_) return;
    std::string list;
    for (const std::string& name : known) list += (list.empty() ? "" : ", ") + name;
    reading_.fault(model, FaultCode::unknown_name,
                   "there is no growth model " + quoted_text(*id) + "; there are " + list,
                   did_you_mean(nearest_name(*id, known)));
  }

  void read_table(const Place& place) {
    auto table = load_yield_table(reading_, place);
    if (!table) return;
    const Place recovery = stand_["yield_table_options"]["recovery_per_yr"];
    const Place exponent = stand_["yield_table_options"]["density_exponent"];
    table->options = {recovery.number_or_zero(), exponent.number_or_zero()};
    reading_.products = table->products;
    reading_.first_table_age = table->age_yr.front();
    reading_.last_table_age = table->age_yr.back();
    block_.source = std::move(*table);
    source_known_ = recovery.usable() && exponent.usable();
  }

  // ---- keys that do not go together

  void refuse_beside_table() {
    for (const char* key : {"site_index_ft", "dominant_height_ft", "planted_tpa"}) {
      if (!stand_[key].given()) continue;
      reading_.fault(stand_[key], FaultCode::contradiction,
                     "a stand that grows by a yield table has no such key: the table says it");
    }
    if (!reading_.tabled_regimes) return;
    refuse_options();
    for (const std::string_view key : standing_measures) {
      if (!stand_[key].given()) continue;
      reading_.fault(
          stand_[key], FaultCode::contradiction,
          "tables of several regimes are for bare land; this belongs to a standing stand");
    }
  }

  void refuse_options() {
    if (!stand_["yield_table_options"].given()) return;
    reading_.fault(stand_["yield_table_options"], FaultCode::contradiction,
                   "these belong to a single \"yield_table\"");
  }

  void refuse_on_bare_land() {
    for (const std::string_view key : of_standing) refuse_without_measures(key);
    if (!reading_.from_tables) refuse_without_measures("dominant_height_ft");
  }

  void refuse_without_measures(std::string_view key) {
    if (!stand_[key].given() || cruise_) return;
    reading_.fault(stand_[key], FaultCode::contradiction,
                   "this belongs to a standing stand, and none is given",
                   "give age_yr, tpa and basal_area_ft2_ac too, or leave it out for bare land");
  }

  // ---- equations

  void read_planted() {
    refuse_options();
    const Place planted = stand_["planted_tpa"];
    if (const auto tpa = planted.number()) block_.planted = trees_per_acre(*tpa);
    if (planted.given()) return;
    const bool land_price = reading_.root["economics"]["after_harvest"].is(kinds::number);
    if (reading_.standing && land_price) return;
    reading_.fault(
        planted, FaultCode::missing_key,
        reading_.standing ? "this key is required: the trees planted after the final harvest"
                          : "this key is required: the trees planted on the bare land",
        reading_.standing ? "it may be missing where after_harvest is a land price" : "");
  }

  void require_site_index() {
    const Place index = stand_["site_index_ft"];
    if (const auto value = index.number()) block_.site_index = feet(*value);
    if (!index.given() && !cruise_) {
      reading_.fault(index, FaultCode::missing_key,
                     "this key is required: dominant height at 25 years, in ft");
    }
  }

  void ask_about_site() {
    if (!block_.site_index) return;
    constexpr double unusual_site_ft = 90;
    const double value = block_.site_index->in(feet);
    if (value <= unusual_site_ft) return;
    reading_.questions.push_back("Site index " + number_text(std::round(value * 10) / 10) +
                                 " ft: base age 50? The equations count it at 25 years.");
  }

  ScenarioReading& reading_;
  const Place stand_;
  StandBlock& block_;
  bool cruise_ = false;
  bool source_known_ = false;
};

void read_stand(ScenarioReading& reading, Scenario& scenario) {
  StandReader(reading, scenario.stand).read();
}

}  // namespace

ScenarioBlock stand_block() { return {stand_options(), stand_conditions, read_stand}; }

bool describes_standing_stand(const json::Node& root) {
  const json::Node* stand = root.find("stand");
  if (!stand) return false;
  return stand->find("cruise") ||
         std::any_of(standing_measures.begin(), standing_measures.end(),
                     [&](std::string_view key) { return stand->find(key) != nullptr; });
}

bool grows_by_equations(const json::Node& root) {
  const json::Node* stand = root.find("stand");
  return stand && stand->find("model");
}

}  // namespace staddle
