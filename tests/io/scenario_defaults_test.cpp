// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "io/scenario_fixture.h"
#include "staddle/io/model_library.h"
#include "staddle/io/option.h"
#include "support/near.h"

namespace staddle {
namespace {

using scenario_tests::bare_land;
using scenario_tests::everything_given;
using scenario_tests::faults_of;
using scenario_tests::Json;
using scenario_tests::on_tabled_regimes;
using scenario_tests::on_yield_table;
using scenario_tests::read;
using scenario_tests::standing_stand;
using scenario_tests::with;
using scenario_tests::without;

// Every default of the format that is used on bare land, as the format states it.
const std::map<std::string, std::string>& defaults_of_the_format() {
  static const std::map<std::string, std::string> defaults = {
      {"/products",
       R"([{"name":"sawtimber","min_dbh_in":11.5,"top_in":8,"grade_fraction":1.0},
           {"name":"chip_n_saw","min_dbh_in":8.5,"top_in":6},
           {"name":"pulpwood","min_dbh_in":4.5,"top_in":3}])"},
      {"/economics/thinning_price_factor", "1.0"},
      {"/economics/thinning_price_discount_usd_per_ton", "0"},
      {"/economics/sale_fee_fraction", "0"},
      {"/economics/harvest_tax_fraction", "0"},
      {"/economics/thinning_sale_cost_usd_ac", "0"},
      {"/economics/final_sale_cost_usd_ac", "0"},
      {"/economics/regeneration_delay_yr", "1"},
      {"/economics/annual_cost_usd_ac", "8"},
      {"/economics/annual_income_usd_ac", "0"},
      {"/economics/practices", "[]"},
      {"/economics/flows", "[]"},
      {"/decisions/max_thinnings", "2"},
      {"/decisions/thinning_age_yr", "[12,35]"},
      {"/decisions/removal_fraction", "[0.20,0.25,0.30,0.3333333333333333,0.40,0.45,0.50]"},
      {"/decisions/years_between_entries", "5"},
      {"/decisions/final_harvest_age_yr", "[20,45]"},
      {"/decisions/min_removal_tons_ac", "0"},
      {"/decisions/min_sale_tons", "0"},
      {"/decisions/min_residual_basal_area_ft2_ac", "0"},
      {"/decisions/cut_diameter_ratio", "0.95"},
      {"/decisions/thinning_response", "\"crown-limited\""},
      {"/decisions/guards/max_removal_fraction", "0.3333333333333333"},
      {"/decisions/guards/dense_stand_now/basal_area_ft2_ac", "140"},
      {"/decisions/guards/dense_stand_now/max_removal_fraction", "0.5"},
      {"/decisions/guards/min_residual_basal_area_ft2_ac", "60"},
      {"/decisions/guards/min_height_ft", "40"},
      {"/decisions/guards/min_qmd_in", "6"},
      {"/decisions/guards/min_live_crown_ratio", "0.30"},
      {"/storm/zone", "\"none\""},
  };
  return defaults;
}

std::map<std::string, Assumption> by_pointer(const Scenario& scenario) {
  std::map<std::string, Assumption> assumed;
  for (const Assumption& assumption : scenario.assumed) {
    CHECK(assumed.count(assumption.pointer) == 0);
    assumed[assumption.pointer] = assumption;
  }
  return assumed;
}

TEST_CASE("the shortest scenario lists every default it uses with the value of the format") {
  const auto assumed = by_pointer(*read(bare_land()));
  for (const auto& [pointer, value] : defaults_of_the_format()) {
    CAPTURE(pointer);
    REQUIRE(assumed.count(pointer) == 1);
    CHECK(Json::parse(assumed.at(pointer).value_json) == Json::parse(value));
    CHECK(assumed.at(pointer).why == "default");
  }
  for (const auto& [pointer, assumption] : assumed) {
    CAPTURE(pointer);
    const bool known = defaults_of_the_format().count(pointer) == 1 ||
                       pointer.rfind("/ready/", 0) == 0 ||
                       pointer == "/economics/stumpage_usd_per_ton";  // real and flat
    CHECK(known);
  }
}

TEST_CASE("the signs of readiness list the limits that they use by default") {
  const auto assumed = by_pointer(*read(bare_land()));
  for (const SignLimit& limit : default_ready_limits()) {
    CAPTURE(limit.sign);
    const std::string pointer = "/ready/" + limit.sign;
    REQUIRE(assumed.count(pointer + "/due") == 1);
    CHECK(Json::parse(assumed.at(pointer + "/due").value_json) == Json(limit.due));
    REQUIRE(assumed.count(pointer + "/late") == (limit.late ? 1 : 0));
    if (limit.late) {
      CHECK(Json::parse(assumed.at(pointer + "/late").value_json) == Json(*limit.late));
    }
  }
}

TEST_CASE("the values read from the shortest scenario are the defaults it lists") {
  const Scenario s = *read(bare_land());
  REQUIRE(s.products.size() == 3);
  CHECK(s.products[0].min_dbh == inches(11.5));
  CHECK(s.products[2].top == inches(3));
  CHECK(s.prices[2].stumpage == dollars_per_ton(7));
  CHECK(s.prices[0].thinning_factor == 1);
  CHECK(s.prices[0].thinning_discount == Price());
  CHECK_FALSE(s.thinning_price_given);
  CHECK(s.costs.regeneration_delay_yr == 1);
  CHECK(s.costs.annual_cost == dollars_per_acre(8));
  CHECK(s.lattice.max_thinnings == 2);
  CHECK(s.lattice.thinning_from == age(12));
  CHECK(s.lattice.thinning_to == age(35));
  CHECK(s.lattice.removal_fractions ==
        std::vector<double>{0.2, 0.25, 0.3, 1.0 / 3, 0.4, 0.45, 0.5});
  CHECK(s.lattice.years_between_entries == 5);
  CHECK(s.lattice.final_from == age(20));
  CHECK(s.lattice.final_to == age(45));
  CHECK(s.cut_diameter_ratios == std::vector<double>{0.95});
  CHECK(s.thinning_response == ThinningResponse::crown_limited);
  const Guards standard = default_guards();
  CHECK(s.lattice.guards.max_removal_fraction == standard.max_removal_fraction);
  CHECK(s.lattice.guards.min_height == standard.min_height);
  CHECK(s.lattice.guards.min_qmd == standard.min_qmd);
  CHECK(s.lattice.guards.min_residual_basal_area == standard.min_residual_basal_area);
  CHECK(s.lattice.guards.min_live_crown_ratio == standard.min_live_crown_ratio);
  CHECK(s.lattice.guards.dense_stand_now->basal_area == standard.dense_stand_now->basal_area);
  CHECK(s.lattice.guards.dense_stand_now->max_removal_fraction ==
        standard.dense_stand_now->max_removal_fraction);
}

TEST_CASE("the limits of readiness are those that the signs use by themselves") {
  const ReadyLimits given = read(bare_land())->ready_limits;
  const ReadyLimits standard = default_ready_limits();
  REQUIRE(given.size() == standard.size());
  for (std::size_t i = 0; i < given.size(); ++i) {
    CHECK(given[i].sign == standard[i].sign);
    CHECK(given[i].due == standard[i].due);
    CHECK(given[i].late == standard[i].late);
  }
}

TEST_CASE("a key that is given is not listed as assumed and what stands beside it is") {
  for (const auto& [pointer, value] : defaults_of_the_format()) {
    CAPTURE(pointer);
    const auto result = read(with(bare_land(), pointer, Json::parse(value)));
    REQUIRE(result);
    const auto assumed = by_pointer(*result);
    CHECK(assumed.count(pointer) == 0);
    for (const auto& [other, unused] : defaults_of_the_format()) {
      if (other != pointer) CHECK(assumed.count(other) == 1);
    }
  }
}

TEST_CASE("a scenario that gives everything assumes no default") {
  const auto result = read(everything_given());
  REQUIRE(result);
  for (const Assumption& assumption : result->assumed) {
    CAPTURE(assumption.pointer);
    CHECK(assumption.why != "default");
  }
}

TEST_CASE("a standing stand assumes its successor and its crown and bare land neither") {
  const auto standing = by_pointer(*read(standing_stand()));
  CHECK(standing.at("/economics/after_harvest").value_json == "\"replant\"");
  CHECK(standing.count("/stand/live_crown_ratio") == 1);
  const auto bare = by_pointer(*read(bare_land()));
  CHECK(bare.count("/economics/after_harvest") == 0);
  CHECK(bare.count("/stand/live_crown_ratio") == 0);
  // Crown ratios mean nothing below age 8.
  const auto young = read(with(standing_stand(), "/stand/age_yr", 7));
  CHECK(by_pointer(*young).count("/stand/live_crown_ratio") == 0);
}

TEST_CASE("the details of storms are assumed only where there are storms") {
  const auto calm = by_pointer(*read(bare_land()));
  CHECK(calm.count("/storm/species") == 0);
  CHECK(calm.count("/storm/recovery_yr") == 0);
  const auto stormy = by_pointer(*read(with(bare_land(), "/storm/zone", "coast")));
  CHECK(stormy.at("/storm/species").value_json == "\"loblolly\"");
  CHECK(stormy.at("/storm/recovery_yr").value_json == "5");
  CHECK(stormy.count("/storm/zone") == 0);
}

TEST_CASE("the defaults of list items are listed at their place in the list") {
  Json scenario = with(standing_stand(), "/stand/other_timber",
                       Json::parse(R"([{"what": "oak", "tons_ac": 4, "usd_per_ton": 5}])"));
  scenario["products"] = Json::parse(R"([{"name": "logs", "min_dbh_in": 9, "top_in": 6},
                                         {"name": "pulpwood", "min_dbh_in": 4.5, "top_in": 3}])");
  scenario["economics"]["stumpage_usd_per_ton"] = {{"logs", 20}, {"pulpwood", 7}};
  scenario["economics"]["thinning_price_factor"] = {{"logs", 0.9}};
  scenario["storm"] = Json::parse(R"({"perils": [
      {"name": "wind", "annual_probability": 0.02, "base_damage_share": 0.3, "wind": true}]})");
  scenario["regimes"] = Json::parse(R"([{"name": "hold", "final_harvest_age_yr": 30}])");
  const auto result = read(scenario);
  CHECK(faults_of(result) == std::vector<std::string>{});
  const auto assumed = by_pointer(*result);
  CHECK(assumed.at("/stand/other_timber/0/growth_fraction_per_yr").value_json == "0");
  CHECK(assumed.at("/products/0/grade_fraction").value_json == "1");
  CHECK(assumed.count("/products/1/grade_fraction") == 0);  // the smallest has none
  CHECK(assumed.at("/economics/thinning_price_factor/pulpwood").value_json == "1");
  CHECK(assumed.count("/economics/thinning_price_factor/logs") == 0);
  CHECK(assumed.at("/storm/perils/0/height_slope_per_10ft").value_json == "0");
  CHECK(assumed.at("/storm/perils/0/thinning_odds_ratio").value_json == "1");
  CHECK(assumed.at("/storm/perils/0/salvage_share").value_json == "0");
  CHECK(assumed.at("/regimes/0/thinnings").value_json == "[]");
}

TEST_CASE("a yield table lists how its stand recovers and has no default products") {
  const auto assumed = by_pointer(*read(on_yield_table()));
  CHECK(assumed.at("/stand/yield_table_options/recovery_per_yr").value_json == "0.09");
  CHECK(assumed.at("/stand/yield_table_options/density_exponent").value_json == "0.45");
  CHECK(assumed.count("/products") == 0);
  CHECK(by_pointer(*read(bare_land())).count("/stand/yield_table_options/recovery_per_yr") == 0);
}

TEST_CASE("default windows of ages are clipped to the yield table and listed as clipped") {
  const auto result = read(on_yield_table());
  CHECK(result->lattice.thinning_to == age(35));
  CHECK(result->lattice.final_to == age(40));
  CHECK(result->lattice.final_from == age(20));
  const auto assumed = by_pointer(*result);
  CHECK(assumed.at("/decisions/final_harvest_age_yr").value_json == "[20,40]");
  CHECK(assumed.at("/decisions/final_harvest_age_yr").why.find("clipped") != std::string::npos);
  CHECK(assumed.at("/decisions/thinning_age_yr").why == "default");
  const auto tabled = by_pointer(*read(on_tabled_regimes()));
  CHECK(tabled.at("/decisions/final_harvest_age_yr").value_json == "[20,40]");
  CHECK(tabled.count("/decisions") == 1);  // its other keys do not apply
}

TEST_CASE("a stand older than the last final harvest is noted to be cut now") {
  const auto old_stand = read(with(standing_stand(), "/stand/age_yr", 46));
  const auto listed = std::count_if(
      old_stand->assumed.begin(), old_stand->assumed.end(), [](const Assumption& assumption) {
        return assumption.pointer == "/decisions/final_harvest_age_yr" &&
               assumption.value_json == "[46,46]";
      });
  CHECK(listed == 1);
  const auto in_time = read(with(standing_stand(), "/stand/age_yr", 45));
  CHECK(by_pointer(*in_time).at("/decisions/final_harvest_age_yr").value_json == "[20,45]");
}

TEST_CASE("prices are said to be real and flat") {
  const auto assumed = by_pointer(*read(bare_land()));
  CHECK(assumed.at("/economics/stumpage_usd_per_ton").value_json == "\"real and flat\"");
}

TEST_CASE("a site index that was not given is solved from the height and listed") {
  Json scenario = without(standing_stand(), "/stand/site_index_ft");
  scenario["stand"]["dominant_height_ft"] = 53;
  const auto result = read(scenario);
  REQUIRE(result);
  const auto& equations = std::get<EquationSet>(result->stand.source);
  CHECK(dominant_height(equations, *result->stand.site_index, age(17)).in(feet) ==
        support::relative(53, support::round_off));
  const auto assumed = by_pointer(*result);
  CHECK(Json::parse(assumed.at("/stand/site_index_ft").value_json) ==
        Json(result->stand.site_index->in(feet)));
}

TEST_CASE("unusual values are asked about and usual ones are not") {
  const auto asked = [](const Json& scenario, const std::string& word) {
    const std::vector<std::string> questions = read(scenario)->questions;
    return std::any_of(questions.begin(), questions.end(), [&](const std::string& question) {
      return question.find(word) != std::string::npos;
    });
  };
  CHECK_FALSE(asked(with(bare_land(), "/stand/site_index_ft", 90), "base age 50?"));
  CHECK(asked(with(bare_land(), "/stand/site_index_ft", 90.1), "base age 50?"));
  CHECK_FALSE(asked(with(bare_land(), "/economics/real_discount_rate", 0.08), "nominal"));
  CHECK(asked(with(bare_land(), "/economics/real_discount_rate", 0.081), "nominal"));
  CHECK_FALSE(asked(standing_stand(), "basal area"));
  CHECK(asked(with(standing_stand(), "/stand/basal_area_ft2_ac", 390), "basal area"));
  // The site solved from a height is asked about like a stated one.
  Json tall = without(standing_stand(), "/stand/site_index_ft");
  tall["stand"]["dominant_height_ft"] = 75;
  CHECK(asked(tall, "base age 50?"));
}

TEST_CASE("the recovery that storms assume is the one of the storm data") {
  CHECK(by_pointer(*read(with(bare_land(), "/storm/zone", "coast")))
            .at("/storm/recovery_yr")
            .value_json == Json(static_cast<int>(default_storm_recovery_yr())).dump());
}

}  // namespace
}  // namespace staddle
