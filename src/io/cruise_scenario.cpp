// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "io/file_names.h"
#include "io/value_writer.h"
#include "staddle/io/cruise_writer.h"

namespace staddle {
namespace {

using json::Value;

// Whether a stated regime could still be carried out.
bool lies_ahead(const Value& regime, int present_yr) {
  if (regime.at("final_harvest_age_yr").get<double>() < present_yr) return false;
  if (!regime.contains("thinnings")) return true;
  const Value& thinnings = regime.at("thinnings");
  return std::all_of(thinnings.begin(), thinnings.end(), [&](const Value& thinning) {
    return thinning.at("age_yr").get<double>() >= present_yr;
  });
}

// Drops the stated regimes that cut before the present; returns their names.
std::string drop_past_regimes(Value& scenario, int present_yr) {
  if (!scenario.contains("regimes")) return "";
  Value kept = Value::array();
  std::string dropped;
  for (const Value& regime : scenario["regimes"]) {
    if (lies_ahead(regime, present_yr)) {
      kept.push_back(regime);
    } else {
      dropped += (dropped.empty() ? "" : ", ") + regime.at("name").get<std::string>();
    }
  }
  scenario["regimes"] = std::move(kept);
  return dropped;
}

Result<Value> site_of(const CruiseQuestion& question, const Appraisal& appraisal) {
  const Scenario& economics = *question.terms.economics;
  if (appraisal.dominant_height) {
    return Value{{"dominant_height_ft", json::number(appraisal.dominant_height->in(feet))}};
  }
  if (economics.stand.site_index) {
    return Value{{"site_index_ft", json::number(economics.stand.site_index->in(feet))}};
  }
  return Faults{{FaultCode::missing_key, question.plots_file, "",
                 "a scenario needs the dominant height, and fewer than three heights were measured",
                 "or let the economics name a site_index_ft"}};
}

// The stand block: what it grows by, then what was measured.
Result<Value> stand_of(const CruiseQuestion& question, const Appraisal& appraisal,
                       const Value& economics_stand) {
  Value stand = Value::object();
  if (question.model == "yield_table") {
    for (const char* key : {"yield_table", "yield_table_options"}) {
      if (economics_stand.contains(key)) stand[key] = economics_stand[key];
    }
  } else {
    stand["model"] = question.model;
    Result<Value> site = site_of(question, appraisal);
    if (!site) return site.error();
    stand.update(*site);
    if (economics_stand.contains("planted_tpa")) {
      stand["planted_tpa"] = economics_stand["planted_tpa"];
    }
  }
  stand["age_yr"] = json::whole_age(*question.terms.at);
  stand["tpa"] = json::number(appraisal.trees.mean.in(trees_per_acre));
  stand["basal_area_ft2_ac"] = json::number(appraisal.basal_area.mean.in(square_feet_per_acre));
  if (appraisal.live_crown_ratio) {
    stand["live_crown_ratio"] = json::number(*appraisal.live_crown_ratio);
  }
  return stand;
}

}  // namespace

Result<std::string> cruise_scenario(
    const CruiseQuestion& question, const Appraisal& appraisal, const std::string& economics,
    const std::function<std::string(const std::string&)>& relocate) {
  require(question.terms.economics && question.terms.at && question.area,
          "a scenario is written from a cruise with age and economics");
  Value scenario = Value::parse(economics, nullptr, true, true);
  Result<Value> stand = stand_of(question, appraisal, scenario.at("stand"));
  if (!stand) return stand.error();
  scenario["stand"] = *stand;
  scenario["acres"] = json::number(question.area->in(acres));
  const std::string dropped = drop_past_regimes(scenario, question.terms.at->whole());
  json::relocate_files(scenario, relocate);
  std::string text = fmt::format("// The stand was measured on {} plots ({}).\n", appraisal.plots,
                                 question.plots_file);
  if (!dropped.empty()) {
    text += "// Left out, since they cut before the present age: " + dropped + "\n";
  }
  return text + json::result_text(scenario);
}

}  // namespace staddle
