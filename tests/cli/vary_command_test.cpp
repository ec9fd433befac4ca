// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "cli/run_here.h"
#include "support/files.h"
#include "support/near.h"
#include "support/program.h"

namespace staddle::support {
namespace {

using nlohmann::json;

const std::string prices_scenario = in_source_tree("scenarios/vary/will_prices_hold.json");

Run vary(std::vector<std::string> options, const std::string& scenario = prices_scenario) {
  options.insert(options.begin(), {"vary", scenario});
  return run_staddle(options);
}

json result_of(const std::string& scenario_text) {
  const Run run = run_staddle({"vary", "-", "--format", "json"}, scenario_text);
  REQUIRE(run.err.empty());
  REQUIRE(run.exit_code == 0);
  return json::parse(run.out);
}

const std::string storms = R"("storm": {"perils": [{"name": "gale", "annual_probability": 0.02,
  "base_damage_share": 0.3, "reference_height_ft": 60, "height_slope_per_10ft": 0.4,
  "thinning_odds_ratio": 3, "wind": true, "salvage_share": 0.3, "cleanup_usd_ac": 100}]},)";
const std::string cells = R"("vary": {"rates": [0.04, 0.065], "price_scenarios":
  [{"name": "low", "stumpage_usd_per_ton": {"pulpwood": 4, "chip_n_saw": 13, "sawtimber": 21}}]},)";

}  // namespace

TEST_CASE("each cell is what advise says of a scenario with that rate and those prices") {
  for (const bool standing : {false, true}) {
    for (const std::string& more : {std::string(), storms}) {
      const std::string text = (standing ? standing_stand : bare_land)(cells + more);
      const json result = result_of(text);
      REQUIRE(result.at("cells").size() == 4);
      const json& sets = result.at("price_scenarios");
      for (const json& cell : result.at("cells")) {
        json scenario = json::parse(text);
        scenario.erase("vary");
        scenario["economics"]["real_discount_rate"] = cell.at("real_discount_rate");
        const std::size_t set = cell.at("price_scenario") == "base" ? 0 : 1;
        scenario["economics"]["stumpage_usd_per_ton"] = sets[set].at("stumpage_usd_per_ton");
        const Run run = run_staddle({"advise", "-", "--format", "json"}, scenario.dump());
        const json best = json::parse(run.out).at("best");
        const json& plan = cell.at("best");
        CHECK(plan.at("final_harvest_age_yr") == best.at("final_harvest_age_yr"));
        REQUIRE(plan.at("thinnings").size() == best.at("thinnings").size());
        for (std::size_t i = 0; i < plan.at("thinnings").size(); ++i) {
          const json& mine = plan.at("thinnings")[i];
          CHECK(mine.at("age_yr") == best.at("thinnings")[i].at("age_yr"));
          CHECK(mine.at("removal_fraction").get<double>() ==
                relative(best.at("thinnings")[i].at("removal_fraction").get<double>(), 1e-9));
        }
        for (const char* key : {"land_expectation_value_usd_ac", "forest_value_usd_ac",
                                "net_present_value_usd_ac"}) {
          CAPTURE(key);
          if (best.at(key).is_null()) {
            CHECK(plan.at(key).is_null());
          } else {
            CHECK(plan.at(key).get<double>() == relative(best.at(key).get<double>(), 1e-12));
          }
        }
        CHECK(cell.at("certificate").at("gap_usd_ac") == 0.0);
      }
    }
  }
}

TEST_CASE("the vary result has what its format promises") {
  const json result = json::parse(vary({"--format", "json"}).out);
  CHECK(result.at("format") == "staddle-vary/1");
  const std::size_t cell_count = 3 * (1 + 2 + 10);
  REQUIRE(result.at("cells").size() == cell_count);
  CHECK(result.at("cells")[0].at("price_scenario") == "base");
  REQUIRE(result.at("regimes").size() == 3);
  CHECK(result.at("regimes")[0].at("name") == "base optimum");
  for (const json& row : result.at("regimes")) {
    CHECK(row.at("loss_usd_ac").size() == cell_count);
    CHECK(row.at("worst_loss_usd_ac").is_number());
    CHECK(row.at("mean_loss_usd_ac").is_number());
  }
  CHECK(result.at("least_worst_loss").is_string());
  CHECK(result.at("best_on_average").is_string());
  CHECK(result.at("grid").at("value_usd_ac").size() == 4);
  CHECK(result.at("grid").at("value_usd_ac")[0].size() == 5);
  CHECK(result.at("grid").at("plan")[3][4].contains("final_harvest_age_yr"));
  REQUIRE(result.at("one_at_a_time").size() == 10);
  for (const json& row : result.at("one_at_a_time")) {
    CHECK(row.at("plan_held_usd_ac").size() == 2);
    CHECK(row.at("reoptimised_usd_ac").size() == 2);
    CHECK(row.at("plan_changes").is_boolean());
    CHECK(row.at("low") <= row.at("high"));
  }
  for (const json& entry : result.at("break_evens")) {
    CHECK(entry.at("value").is_null() == entry.at("bracket").is_null());
    CHECK(entry.at("value").is_null() == entry.at("reason").is_string());
  }
}

TEST_CASE("threads and the way of answering change no byte of a vary result") {
  for (const char* format : {"json", "csv", "text"}) {
    const std::string one = vary({"--format", format, "--threads", "1"}).out;
    CHECK_FALSE(one.empty());
    CHECK(vary({"--format", format, "--threads", "2"}).out == one);
    CHECK(vary({"--format", format, "--separate"}).out == one);
  }
}

TEST_CASE("the CSV of vary has one heading and a cell for each of its columns in every line") {
  const std::string text = vary({"--format", "csv"}).out;
  CHECK(text.starts_with("kind,name,real_discount_rate,price_scenario,"));
  for (const char* kind : {"cell", "regime", "grid", "one_at_a_time", "break_even"}) {
    CHECK(text.find(std::string("\n") + kind + ",") != std::string::npos);
  }
}

TEST_CASE("vary without a vary block is told what is missing") {
  const Run run = run_staddle({"vary", "-"}, bare_land());
  CHECK(run.exit_code == 3);
  CHECK(run.out.empty());
  CHECK(run.err.find("/vary: this block says what is to be varied") != std::string::npos);
}

TEST_CASE("a lattice without a regime is an answer of vary with reasons") {
  // A table that ends before the first final harvest allowed.
  const TemporaryDirectory folder;
  folder.write("table.csv",
               "age_yr,dominant_height_ft,tpa,basal_area_ft2_ac,saw_tons_ac,pulp_tons_ac\n"
               "5,15,575,30,0,15\n10,30,550,60,5,30\n15,45,525,90,10,45\n18,54,510,108,13,54\n");
  const std::string file = folder.write("a.json", R"({"format": "staddle-scenario/1",
    "title": "Table", "acres": 40, "stand": {"yield_table": "table.csv"},
    "economics": {"real_discount_rate": 0.05, "establishment_usd_ac": 350,
    "stumpage_usd_per_ton": {"pulp": 7, "saw": 18}}, "vary": {}})");
  const Run run = run_staddle({"vary", file, "--format", "json"});
  CHECK(run.exit_code == 0);
  const json result = json::parse(run.out);
  CHECK(result.at("cells")[0].at("best").is_null());
  CHECK(result.at("cells")[0].at("reason").is_string());
  CHECK(result.at("least_worst_loss").is_null());
  CHECK(run_staddle({"vary", file}).exit_code == 0);
  CHECK(run_staddle({"vary", file, "--format", "csv"}).exit_code == 0);
}

}  // namespace staddle::support
