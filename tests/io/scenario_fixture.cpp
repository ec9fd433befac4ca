// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/scenario_fixture.h"

namespace staddle::scenario_tests {

Json bare_land() {
  return Json::parse(R"({
    "format": "staddle-scenario/1", "title": "bare land", "acres": 40,
    "stand": {"model": "loblolly-planted-coastal", "site_index_ft": 70, "planted_tpa": 600},
    "economics": {"real_discount_rate": 0.05,
                  "stumpage_usd_per_ton": {"pulpwood": 7, "chip_n_saw": 18, "sawtimber": 25},
                  "establishment_usd_ac": 350}})");
}

Json standing_stand() {
  Json scenario = bare_land();
  scenario["title"] = "standing stand";
  scenario["stand"]["age_yr"] = 17;
  scenario["stand"]["tpa"] = 480;
  scenario["stand"]["basal_area_ft2_ac"] = 132;
  return scenario;
}

Json on_yield_table() {
  Json scenario = bare_land();
  scenario["title"] = "own yields";
  scenario["stand"] = {{"yield_table", "table.csv"}};
  scenario["economics"]["stumpage_usd_per_ton"] = {{"logs", 20}, {"pulp", 7}};
  return scenario;
}

Json on_tabled_regimes() {
  Json scenario = on_yield_table();
  scenario["stand"] = Json::parse(R"({"yield_tables": [
      {"name": "unthinned", "file": "table.csv", "thinnings": []},
      {"name": "thinned", "file": "thinned.csv", "thinnings": [
        {"age_yr": 20, "logs_tons_ac": 3, "pulp_tons_ac": 22, "removal_fraction": 0.3}]}]})");
  return scenario;
}

Json everything_given() {
  return Json::parse(R"({
    "format": "staddle-scenario/1", "title": "everything", "purpose": "to name every key",
    "owner": "an owner", "prepared_by": "a forester", "acres": 62, "calendar_year": 2027,
    "stand": {
      "model": "loblolly-planted-upland", "site_index_ft": 70, "planted_tpa": 600,
      "age_yr": 15, "tpa": 480, "basal_area_ft2_ac": 120, "dominant_height_ft": 48.7,
      "live_crown_ratio": 0.36, "last_thinning": {"age_yr": 12, "removal_fraction": 0.33},
      "other_timber": [{"what": "hardwood pulpwood", "tons_ac": 8,
                        "growth_fraction_per_yr": 0.02, "usd_per_ton": 6}],
      "measured_calendar_year": 2025},
    "products": [
      {"name": "sawtimber", "min_dbh_in": 11.5, "top_in": 8, "grade_fraction": 0.8},
      {"name": "pulpwood", "min_dbh_in": 4.5, "top_in": 3}],
    "economics": {
      "real_discount_rate": 0.05,
      "stumpage_usd_per_ton": {"pulpwood": {"usd_per_unit": 19, "tons_per_unit": 2.675},
                               "sawtimber": 25},
      "establishment_usd_ac": 350,
      "thinning_price_factor": {"pulpwood": 0.9, "sawtimber": 0.8},
      "thinning_price_discount_usd_per_ton": {"pulpwood": 1, "sawtimber": 2},
      "sale_fee_fraction": 0.08, "harvest_tax_fraction": 0.02,
      "thinning_sale_cost_usd_ac": 10, "final_sale_cost_usd_ac": 20,
      "regeneration_delay_yr": 2, "annual_cost_usd_ac": 6, "annual_income_usd_ac": 9,
      "practices": [{"what": "release spray", "age_yr": 2, "usd_ac": 65}],
      "flows": [{"what": "straw", "from_age_yr": 9, "to_age_yr": 15, "usd_ac_yr": 60},
                {"what": "lease", "from_age_yr": 1, "to_age_yr": "final_harvest", "usd_ac_yr": 5}],
      "after_harvest": "best"},
    "decisions": {
      "max_thinnings": 3, "thinning_age_yr": [14, 30],
      "removal_fraction": {"from": 0.2, "to": 0.4, "step": 0.1},
      "years_between_entries": 6, "final_harvest_age_yr": [22, 50],
      "min_removal_tons_ac": 10, "min_sale_tons": 300, "min_residual_basal_area_ft2_ac": 50,
      "cut_diameter_ratio": [1.0, 0.9], "thinning_response": "as-published",
      "guards": {"max_removal_fraction": 0.4,
                 "dense_stand_now": {"basal_area_ft2_ac": 150, "max_removal_fraction": 0.45},
                 "min_residual_basal_area_ft2_ac": 65, "min_height_ft": 42, "min_qmd_in": 6.5,
                 "min_live_crown_ratio": 0.32}},
    "storm": {
      "perils": [
        {"name": "total loss", "annual_probability": 0.01, "damage_share": 1.0,
         "salvage_share": 0.25, "cleanup_usd_ac": 500},
        {"name": "wind", "annual_probability": 0.02, "base_damage_share": 0.3,
         "reference_height_ft": 65, "height_slope_per_10ft": 0.4,
         "slenderness_slope_per_10": 0.2, "thinning_odds_ratio": 3, "wind": true,
         "salvage_share": 0.3, "cleanup_usd_ac": 100}],
      "species": "slash", "recovery_yr": 6},
    "site": {"soil": "sand", "drainage": "dry", "indicator_plants": ["prickly pear"],
             "month_of_cut": 3, "wet_site_statement": "no wet ground"},
    "ready": {"age_yr": {"due": 13, "late": 19}, "dominant_height_ft": {"due": 41, "late": 61},
              "qmd_in": {"due": 6.5, "late": 9}, "basal_area_ft2_ac": {"due": 121, "late": 161},
              "live_crown_ratio": {"due": 0.41, "late": 0.31},
              "density_index_share": {"due": 0.46, "late": 0.66},
              "relative_spacing": {"due": 0.21, "late": 0.16},
              "crown_cover_fraction": {"due": 0.9, "late": 1.1}},
    "regimes": [
      {"name": "no thinning", "thinnings": [], "final_harvest_age_yr": 30},
      {"name": "three ways", "thinnings": [
         {"age_yr": 18, "removal_fraction": 0.3}, {"age_yr": 24, "residual_basal_area_ft2_ac": 75},
         {"age_yr": 30, "residual_tpa": 100}], "final_harvest_age_yr": 38}]})");
}

const std::map<std::string, std::string>& table_files() {
  static const std::map<std::string, std::string> files = {
      {"table.csv",
       "age_yr,dominant_height_ft,tpa,basal_area_ft2_ac,logs_tons_ac,pulp_tons_ac\n"
       "10,34,540,80,0,30\n15,48,500,120,2,65\n20,60,450,145,15,80\n25,70,400,160,40,80\n"
       "30,78,350,168,70,75\n40,90,280,175,110,65\n"},
      {"thinned.csv",
       "age_yr,dominant_height_ft,tpa,basal_area_ft2_ac,logs_tons_ac,pulp_tons_ac\n"
       "10,34,540,80,0,30\n20,60,300,100,12,58\n25,70,290,125,35,60\n30,78,280,140,65,55\n"
       "40,90,260,155,115,45\n"}};
  return files;
}

Result<Scenario> read(const Json& scenario) { return read(scenario.dump(1)); }

Result<Scenario> read(const std::string& text) {
  return read_scenario(text, "stand.json", [](const std::string& name) -> Result<std::string> {
    const auto found = table_files().find(name);
    if (found == table_files().end()) {
      return Faults{{FaultCode::unreadable, name, "", "there is no such file", ""}};
    }
    return found->second;
  });
}

Json with(Json scenario, const std::string& pointer, const Json& value) {
  scenario[Json::json_pointer(pointer)] = value;
  return scenario;
}

Json without(Json scenario, const std::string& pointer) {
  const Json::json_pointer place(pointer);
  Json& parent = scenario[place.parent_pointer()];
  if (parent.is_array()) {
    parent.erase(std::stoul(place.back()));
  } else {
    parent.erase(place.back());
  }
  return scenario;
}

std::string name_of(FaultCode code) {
  switch (code) {
    case FaultCode::unreadable:
      return "unreadable";
    case FaultCode::malformed:
      return "malformed";
    case FaultCode::unknown_key:
      return "unknown key";
    case FaultCode::repeated_key:
      return "repeated key";
    case FaultCode::missing_key:
      return "missing key";
    case FaultCode::wrong_type:
      return "wrong type";
    case FaultCode::out_of_range:
      return "out of range";
    case FaultCode::contradiction:
      return "contradiction";
    case FaultCode::unknown_name:
      return "unknown name";
    case FaultCode::no_regime:
      return "no regime";
  }
  return "?";
}

std::vector<std::string> faults_of(const Result<Scenario>& result) {
  std::vector<std::string> lines;
  if (result) return lines;
  for (const Fault& fault : result.error()) {
    lines.push_back(name_of(fault.code) + " at " + fault.place);
  }
  return lines;
}

Faults faults_at(const Result<Scenario>& result, const std::string& place) {
  Faults faults;
  if (result) return faults;
  for (const Fault& fault : result.error()) {
    if (fault.place == place) faults.push_back(fault);
  }
  return faults;
}

}  // namespace staddle::scenario_tests
