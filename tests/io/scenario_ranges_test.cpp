// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "io/scenario_fixture.h"
#include "staddle/io/option.h"

namespace staddle {
namespace {

using scenario_tests::bare_land;
using scenario_tests::everything_given;
using scenario_tests::faults_at;
using scenario_tests::Json;
using scenario_tests::on_tabled_regimes;
using scenario_tests::on_yield_table;
using scenario_tests::read;
using scenario_tests::with;

// A range of the format: numbers just inside it, and numbers just outside.
struct Straddled {
  std::string pointer;
  std::vector<double> inside;
  std::vector<double> outside;
};

constexpr double just = 1e-9;

// Ranges whose key stands in everything_given(), as the format states them.
const std::vector<Straddled>& ranges() {
  static const std::vector<double> price_in{0, 1e5};
  static const std::vector<double> price_out{-just, 1e5 + 1e-6};
  static const std::vector<double> fraction_in{0, 1 - just};
  static const std::vector<double> fraction_out{-just, 1};
  static const std::vector<double> age_in{1, 150};
  static const std::vector<double> age_out{0, 151};
  static const std::vector<double> removal_in{just, 0.9};
  static const std::vector<double> removal_out{0, 0.9 + just};
  static const std::vector<double> limit_in{0, 400};
  static const std::vector<double> limit_out{-just, 400 + just * 1e3};
  static const std::vector<double> ratio_in{just, 1 - just};
  static const std::vector<double> ratio_out{0, 1};
  static const std::vector<Straddled> all = {
      {"/acres", {just, 1e6}, {0, 1e6 + 1e-6}},
      {"/calendar_year", {1900, 2200}, {1899, 2201}},
      {"/stand/site_index_ft", {30, 120}, {30 - just, 120 + just * 1e2}},
      {"/stand/planted_tpa", {100, 4000}, {100 - just * 1e2, 4000 + 1e-6}},
      {"/stand/age_yr", age_in, age_out},
      {"/stand/tpa", {30, 4000}, {30 - just, 4000 + 1e-6}},
      {"/stand/basal_area_ft2_ac", {just, 400}, {0, 400 + 1e-6}},
      {"/stand/live_crown_ratio", ratio_in, ratio_out},
      {"/stand/last_thinning/age_yr", age_in, age_out},
      {"/stand/last_thinning/removal_fraction", removal_in, removal_out},
      {"/stand/other_timber/0/growth_fraction_per_yr", {-0.5 + just, 0.5 - just}, {-0.5, 0.5}},
      {"/stand/other_timber/0/usd_per_ton", price_in, price_out},
      {"/stand/measured_calendar_year", {1900, 2200}, {1899, 2201}},
      {"/products/0/grade_fraction", {0, 1}, {-just, 1 + just}},
      {"/economics/real_discount_rate", {just, 0.5}, {0, 0.5 + just}},
      {"/economics/stumpage_usd_per_ton/sawtimber", price_in, price_out},
      {"/economics/stumpage_usd_per_ton/pulpwood/usd_per_unit", price_in, price_out},
      {"/economics/stumpage_usd_per_ton/pulpwood/tons_per_unit", {just, 1000}, {0, 1000.001}},
      {"/economics/establishment_usd_ac", price_in, price_out},
      {"/economics/thinning_price_factor/sawtimber", {0, 10}, {-just, 10 + just * 10}},
      {"/economics/thinning_price_discount_usd_per_ton/sawtimber", price_in, price_out},
      {"/economics/sale_fee_fraction", fraction_in, fraction_out},
      {"/economics/harvest_tax_fraction", fraction_in, fraction_out},
      {"/economics/thinning_sale_cost_usd_ac", price_in, price_out},
      {"/economics/final_sale_cost_usd_ac", price_in, price_out},
      {"/economics/regeneration_delay_yr", {0, 20}, {-1, 21}},
      {"/economics/annual_cost_usd_ac", price_in, price_out},
      {"/economics/annual_income_usd_ac", price_in, price_out},
      {"/economics/practices/0/age_yr", {0, 150}, {-1, 151}},
      {"/economics/practices/0/usd_ac", price_in, price_out},
      {"/economics/flows/0/from_age_yr", age_in, age_out},
      {"/economics/flows/0/to_age_yr", age_in, age_out},
      {"/economics/flows/0/usd_ac_yr", {-1e5, 1e5}, {-1e5 - 1e-6, 1e5 + 1e-6}},
      {"/economics/after_harvest", price_in, price_out},
      {"/decisions/max_thinnings", {0, 6}, {-1, 7}},
      {"/decisions/thinning_age_yr/0", {1}, age_out},
      {"/decisions/thinning_age_yr/1", {150}, age_out},
      {"/decisions/removal_fraction/from", removal_in, removal_out},
      {"/decisions/removal_fraction/to", removal_in, removal_out},
      {"/decisions/years_between_entries", {1, 40}, {0, 41}},
      {"/decisions/final_harvest_age_yr/0", {1}, age_out},
      {"/decisions/final_harvest_age_yr/1", {150}, age_out},
      {"/decisions/min_removal_tons_ac", {0}, {-just}},
      {"/decisions/min_sale_tons", {0}, {-just}},
      {"/decisions/min_residual_basal_area_ft2_ac", limit_in, limit_out},
      {"/decisions/cut_diameter_ratio/0", {0.7, 1.3}, {0.7 - just, 1.3 + just}},
      {"/decisions/cut_diameter_ratio/1", {0.7, 1.3}, {0.7 - just, 1.3 + just}},
      {"/decisions/guards/max_removal_fraction", removal_in, removal_out},
      {"/decisions/guards/dense_stand_now/basal_area_ft2_ac", limit_in, limit_out},
      {"/decisions/guards/dense_stand_now/max_removal_fraction", removal_in, removal_out},
      {"/decisions/guards/min_residual_basal_area_ft2_ac", limit_in, limit_out},
      {"/decisions/guards/min_height_ft", {0}, {-just}},
      {"/decisions/guards/min_qmd_in", {0}, {-just}},
      {"/decisions/guards/min_live_crown_ratio", fraction_in, fraction_out},
      {"/storm/perils/0/annual_probability", {0, 1}, {-just, 1 + just}},
      {"/storm/perils/0/damage_share", {just, 1}, {0, 1 + just}},
      {"/storm/perils/0/salvage_share", {0, 1}, {-just, 1 + just}},
      {"/storm/perils/0/cleanup_usd_ac", price_in, price_out},
      {"/storm/perils/1/base_damage_share", ratio_in, ratio_out},
      {"/storm/perils/1/thinning_odds_ratio", {just, 100}, {0, 100 + just * 1e2}},
      {"/storm/recovery_yr", {1, 20}, {1 - just, 20 + just * 10}},
      {"/site/month_of_cut", {1, 12}, {0, 13}},
      {"/regimes/1/thinnings/0/age_yr", age_in, age_out},
      {"/regimes/1/thinnings/0/removal_fraction", removal_in, removal_out},
      {"/regimes/1/thinnings/1/residual_basal_area_ft2_ac", {just, 400}, {0, 400 + 1e-6}},
      {"/regimes/0/final_harvest_age_yr", age_in, age_out},
  };
  return all;
}

bool out_of_range_at(const Json& scenario, const std::string& pointer) {
  for (const Fault& fault : faults_at(read(scenario), pointer)) {
    if (fault.code == FaultCode::out_of_range && fault.text.find("allowed") != std::string::npos) {
      return true;
    }
  }
  return false;
}

void check_straddled(const Json& scenario, const Straddled& range) {
  CAPTURE(range.pointer);
  REQUIRE(scenario.contains(Json::json_pointer(range.pointer)));
  for (const double value : range.inside) {
    CAPTURE(value);
    CHECK_FALSE(out_of_range_at(with(scenario, range.pointer, value), range.pointer));
  }
  for (const double value : range.outside) {
    CAPTURE(value);
    CHECK(out_of_range_at(with(scenario, range.pointer, value), range.pointer));
  }
}

TEST_CASE("every range takes the numbers just inside it and refuses those just outside") {
  for (const Straddled& range : ranges()) check_straddled(everything_given(), range);
}

TEST_CASE("a land price and factors for all products have the ranges of the same by product") {
  Json scenario = everything_given();
  scenario["economics"]["thinning_price_factor"] = 1;
  scenario["economics"]["thinning_price_discount_usd_per_ton"] = 1;
  scenario["decisions"]["cut_diameter_ratio"] = 1;
  scenario["decisions"]["removal_fraction"] = {0.2, 0.3};
  check_straddled(scenario, {"/economics/thinning_price_factor", {0, 10}, {-just, 10.001}});
  check_straddled(scenario,
                  {"/economics/thinning_price_discount_usd_per_ton", {0, 1e5}, {-just, 100001}});
  check_straddled(scenario,
                  {"/decisions/cut_diameter_ratio", {0.7, 1.3}, {0.7 - just, 1.3 + just}});
  check_straddled(scenario, {"/decisions/removal_fraction/1", {just, 0.9}, {0, 0.9 + just}});
}

TEST_CASE("the options of a yield table reach from 0 to 1") {
  Json scenario = with(on_yield_table(), "/stand/yield_table_options",
                       {{"recovery_per_yr", 0.1}, {"density_exponent", 0.5}});
  check_straddled(scenario,
                  {"/stand/yield_table_options/recovery_per_yr", {0, 1}, {-just, 1 + just}});
  check_straddled(scenario,
                  {"/stand/yield_table_options/density_exponent", {0, 1}, {-just, 1 + just}});
  check_straddled(on_tabled_regimes(),
                  {"/stand/yield_tables/1/thinnings/0/removal_fraction", {just, 0.9}, {0, 0.91}});
}

TEST_CASE("a price by the unit is held to the range of prices by the ton") {
  const std::string pointer = "/economics/stumpage_usd_per_ton/sawtimber";
  CHECK(read(with(bare_land(), pointer, {{"usd_per_unit", 1e5}, {"tons_per_unit", 1}})));
  const auto dear =
      read(with(bare_land(), pointer, {{"usd_per_unit", 1e5}, {"tons_per_unit", 0.5}}));
  CHECK(scenario_tests::faults_of(dear) == std::vector<std::string>{"out of range at " + pointer});
}

TEST_CASE("a stated regime has six thinnings at most as the lattice has") {
  const auto regime_of = [](int thinnings) {
    Json regime = {{"name", "often"}, {"thinnings", Json::array()}, {"final_harvest_age_yr", 40}};
    for (int i = 0; i < thinnings; ++i) {
      regime["thinnings"].push_back(Json{{"age_yr", 15 + i}, {"removal_fraction", 0.1}});
    }
    return scenario_tests::faults_of(read(with(bare_land(), "/regimes", Json::array({regime}))));
  };
  CHECK(regime_of(6) == std::vector<std::string>{});
  CHECK(regime_of(7) == std::vector<std::string>{"out of range at /regimes/0/thinnings"});
}

// A value of each kind, and which kinds it counts as.
const std::vector<std::pair<Json, ValueKinds>>& values_of_each_kind() {
  static const std::vector<std::pair<Json, ValueKinds>> values = {
      {nullptr, kinds::null},  {true, kinds::boolean},       {0.5, kinds::number},
      {"a text", kinds::text}, {Json::array(), kinds::list}, {Json::object(), kinds::object},
  };
  return values;
}

TEST_CASE("a key refuses every kind of value that the format does not give it") {
  std::size_t tried = 0;
  const Json scenario = everything_given();
  for (const Option& option : scenario_options()) {
    std::string pointer(option.pointer);
    for (std::size_t at; (at = pointer.find('#')) != std::string::npos;) pointer[at] = '0';
    if (!scenario.contains(Json::json_pointer(pointer))) continue;
    CAPTURE(pointer);
    for (const auto& [value, kind] : values_of_each_kind()) {
      if (option.allowed.has(kind)) continue;
      if (kind == kinds::number && option.allowed.has(kinds::whole)) continue;
      CAPTURE(value.dump());
      const Faults faults = faults_at(read(with(scenario, pointer, value)), pointer);
      REQUIRE_FALSE(faults.empty());
      CHECK(faults.front().code == FaultCode::wrong_type);
      ++tried;
    }
  }
  CHECK(tried > 400);
}

TEST_CASE("whole numbers may be written with a point and fractions are refused") {
  for (const char* pointer : {"/decisions/max_thinnings", "/decisions/years_between_entries",
                              "/economics/regeneration_delay_yr", "/stand/age_yr",
                              "/decisions/thinning_age_yr/0", "/calendar_year"}) {
    CAPTURE(pointer);
    const Json scenario = everything_given();
    const double given = scenario[Json::json_pointer(pointer)].get<double>();
    CHECK(faults_at(read(with(scenario, pointer, given)), pointer).empty());
    const Faults faults = faults_at(read(with(scenario, pointer, given + 0.5)), pointer);
    REQUIRE(faults.size() == 1);
    CHECK(faults.front().code == FaultCode::wrong_type);
    CHECK(faults.front().text.find("whole") != std::string::npos);
  }
}

TEST_CASE("a fault of range says what was found and what is allowed with its unit") {
  const auto result = read(with(bare_land(), "/stand/site_index_ft", 20));
  REQUIRE_FALSE(result);
  CHECK(to_line(result.error().front()) ==
        "stand.json: /stand/site_index_ft: found 20; allowed is a number from 30 to 120 ft");
}

}  // namespace
}  // namespace staddle
