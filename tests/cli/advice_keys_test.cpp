// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <nlohmann/json.hpp>

#include "cli/run_here.h"
#include "support/files.h"
#include "support/near.h"

namespace staddle {
namespace {

using Json = nlohmann::ordered_json;
using support::Run;
using support::run_staddle;

// What JSON shows of a scenario; the text `more` adds keys to it.
Json advice_of(const std::string& scenario, const std::vector<std::string>& options = {}) {
  std::vector<std::string> words{"advise", "-", "--format", "json"};
  words.insert(words.end(), options.begin(), options.end());
  const Run run = run_staddle(words, scenario);
  INFO(run.err);
  REQUIRE(run.exit_code == 0);
  return Json::parse(run.out);
}

void check_keys(const Json& object, const std::vector<std::string>& keys) {
  for (const std::string& key : keys) {
    CAPTURE(key);
    CHECK(object.contains(key));
  }
}

void check_measures(const Json& measures) {
  check_keys(measures,
             {"tpa", "basal_area_ft2_ac", "qmd_in", "dominant_height_ft", "live_crown_ratio"});
}

void check_plan(const Json& plan) {
  check_keys(plan, {"thinnings", "final_harvest_age_yr", "land_expectation_value_usd_ac",
                    "forest_value_usd_ac", "net_present_value_usd_ac"});
  for (const Json& thinning : plan["thinnings"])
    check_keys(thinning, {"age_yr", "removal_fraction"});
}

void check_regime(const Json& regime) {
  check_plan(regime);
  check_keys(regime, {"final_harvest", "equal_annual_equivalent_usd_ac", "benefit_cost_ratio",
                      "internal_rate_of_return", "internal_rates_of_return",
                      "internal_rate_of_return_reason", "cash_flow"});
  check_keys(regime["final_harvest"], {"tons_ac", "revenue_usd_ac", "before"});
  check_measures(regime["final_harvest"]["before"]);
  for (const Json& thinning : regime["thinnings"]) {
    check_keys(thinning, {"tons_ac", "revenue_usd_ac"});
    check_measures(thinning["before"]);
    check_measures(thinning["after"]);
  }
  for (const Json& line : regime["cash_flow"]) check_keys(line, {"age_yr", "what", "usd_ac"});
}

void check_advice(const Json& advice) {
  check_keys(advice, {"format", "objective", "best", "regimes", "alternatives", "near_best",
                      "guard_costs", "certificate", "risk_notes", "survives", "ready",
                      "ready_judgement", "cautions", "assumed", "model"});
  CHECK(advice["format"] == "staddle-advice/1");
  check_regime(advice["best"]);
  for (const Json& regime : advice["regimes"]) {
    check_regime(regime);
    check_keys(regime, {"name", "loss_against_best_usd_ac", "breaks"});
    for (const Json& limit : regime["breaks"]) check_keys(limit, {"limit", "value", "allowed"});
  }
  for (const Json& alternative : advice["alternatives"]) check_regime(alternative);
  check_keys(advice["near_best"],
             {"tolerance_usd_ac", "first_thinning_age_yr", "final_harvest_age_yr"});
  for (const Json& guard : advice["guard_costs"]) check_keys(guard, {"guard", "usd_ac"});
  check_keys(advice["certificate"], {"lattice_regimes", "regimes_valued", "gap_usd_ac"});
  for (const Json& note : advice["risk_notes"])
    check_keys(note, {"topic", "level", "text", "figures"});
  for (const Json& survival : advice["survives"]) {
    check_keys(survival, {"change", "best", "same_advice", "kept_plan_loss_usd_ac"});
    check_plan(survival["best"]);
  }
  for (const Json& sign : advice["ready"]) {
    check_keys(sign, {"sign", "value", "threshold", "verdict", "about_age_yr"});
  }
  for (const Json& assumption : advice["assumed"])
    check_keys(assumption, {"pointer", "value", "why"});
  check_keys(advice["model"], {"id", "source", "outside_fitted_range"});
}

const char* const heavy_and_empty_cuts =
    R"("regimes": [{"name": "a heavy cut", "final_harvest_age_yr": 30,
        "thinnings": [{"age_yr": 18, "residual_basal_area_ft2_ac": 55}]},
      {"name": "a cut that finds nothing", "final_harvest_age_yr": 30,
        "thinnings": [{"age_yr": 18, "residual_basal_area_ft2_ac": 300}]}],)";

TEST_CASE("the answer for bare land has every key of its format") {
  const Json advice = advice_of(support::bare_land(heavy_and_empty_cuts));
  check_advice(advice);
  CHECK(advice["objective"] == "land_expectation_value");
  CHECK(advice["best"]["forest_value_usd_ac"].is_null());
  CHECK(advice["best"]["internal_rate_of_return"].is_number());
  CHECK(advice["regimes"].size() == 2);
  CHECK(!advice["regimes"][0]["breaks"].empty());
  CHECK(advice["alternatives"].size() == 2);
  CHECK(!advice.contains("storm"));
}

TEST_CASE("the answer for a standing stand has every key of its format") {
  const Json advice = advice_of(support::standing_stand(heavy_and_empty_cuts));
  check_advice(advice);
  CHECK(advice["objective"] == "forest_value");
  CHECK(advice["best"]["forest_value_usd_ac"].is_number());
  CHECK(advice["best"]["internal_rate_of_return"].is_null());
  CHECK(advice["best"]["internal_rate_of_return_reason"].is_string());
  CHECK(advice["ready"].size() >= 7);
  CHECK(!advice["ready_judgement"].get<std::string>().empty());
  CHECK(advice["survives"].size() == 4);
  CHECK(advice["cautions"].size() >= 6);
}

TEST_CASE("with a land price and no planted trees the land expectation value is null") {
  std::string scenario = support::standing_stand();
  const std::string planted = "\n  \"planted_tpa\": 600";
  const std::size_t at = scenario.find(planted);
  REQUIRE(at != std::string::npos);
  scenario.replace(scenario.rfind(',', at), planted.size() + 1, "");
  scenario.replace(scenario.find("\"establishment_usd_ac\""), 0, "\"after_harvest\": 900, ");
  const Json advice = advice_of(scenario);
  check_advice(advice);
  CHECK(advice["best"]["land_expectation_value_usd_ac"].is_null());
  CHECK(advice["land_value_usd_ac"] == 900.0);
}

TEST_CASE("an answer with a storm zone tells the storms and what is left standing") {
  const Json advice = advice_of(support::standing_stand(R"("storm": {"zone": "coast"},)"));
  check_advice(advice);
  REQUIRE(advice.contains("storm"));
  const Json& storm = advice["storm"];
  check_keys(storm, {"blind_plan", "odds_ratios", "third_instead", "yearly_loss_usd_ac"});
  check_plan(storm["blind_plan"]);
  REQUIRE(!storm["odds_ratios"].empty());
  for (const Json& row : storm["odds_ratios"]) {
    check_keys(row, {"odds_ratio", "best", "same_advice"});
    check_plan(row["best"]);
  }
  CHECK(std::count_if(storm["odds_ratios"].begin(), storm["odds_ratios"].end(),
                      [](const Json& row) { return row["odds_ratio"].is_null(); }) == 1);
  CHECK(storm["yearly_loss_usd_ac"].size() == advice["best"]["thinnings"].size());
  for (const Json& row : storm["yearly_loss_usd_ac"])
    check_keys(row, {"age_yr", "before", "after"});
  CHECK(advice["best"]["final_harvest"]["share_standing"] < 1.0);
  for (const Json& thinning : advice["best"]["thinnings"]) {
    CHECK(thinning["share_standing"] <= 1.0);
  }
}

TEST_CASE("a stated cut that finds less than it leaves is listed with nothing cut and marked") {
  const Json advice = advice_of(support::bare_land(heavy_and_empty_cuts));
  const Json& thinning = advice["regimes"][1]["thinnings"][0];
  CHECK(thinning["cuts_nothing"] == true);
  for (const auto& [product, tons] : thinning["tons_ac"].items()) CHECK(tons == 0.0);
}

TEST_CASE("the cash flow of the answer discounts to its net present value") {
  const Json advice = advice_of(support::bare_land());
  double sum = 0.0;
  for (const Json& line : advice["best"]["cash_flow"]) {
    sum += line["usd_ac"].get<double>() * std::pow(1.05, -line["age_yr"].get<double>());
  }
  CHECK(sum == support::relative(advice["best"]["net_present_value_usd_ac"].get<double>(), 1e-9));
}

TEST_CASE("the exhaustive search answers the same in every key but the count of what it priced") {
  Json quick = advice_of(support::standing_stand(heavy_and_empty_cuts));
  Json slow = advice_of(support::standing_stand(heavy_and_empty_cuts), {"--exhaustive"});
  CHECK(slow["certificate"]["regimes_valued"] >= quick["certificate"]["regimes_valued"]);
  quick.erase("certificate");
  slow.erase("certificate");
  CHECK(quick == slow);
}

TEST_CASE("a proof on request agrees for the stand and for what follows it") {
  const Json advice = advice_of(support::standing_stand(), {"--prove"});
  for (const std::string part : {"stand", "successor"}) {
    CAPTURE(part);
    const Json& proof = advice["proof"][part];
    CHECK(proof["agrees"] == true);
    CHECK(proof["by_linear_program_usd_ac"].get<double>() ==
          support::relative(proof["by_optimiser_usd_ac"].get<double>(), 1e-8));
  }
  const Run text = run_staddle({"advise", "-", "--prove"}, support::bare_land());
  CHECK(text.out.find("They agree.") != std::string::npos);
}

TEST_CASE("a lattice too large for a proof is refused with its size and a coarser step") {
  std::string scenario = support::bare_land();
  const std::string small = "[0.25, 0.33]";
  scenario.replace(scenario.find(small), small.size(),
                   R"({"from": 0.2, "to": 0.33, "step": 0.01})");
  scenario.replace(scenario.find("\"max_thinnings\": 1"), 18, "\"max_thinnings\": 3");
  scenario.replace(scenario.find("[15, 20]"), 8, "[12, 35]");
  const Run run = run_staddle({"advise", "-", "--prove"}, scenario);
  CHECK(run.exit_code == 3);
  CHECK(run.out.empty());
  CHECK(run.err.find("states") != std::string::npos);
  CHECK(run.err.find("removal") != std::string::npos);
}

TEST_CASE("tables of fixed regimes leave nothing for a proof") {
  const Run run = run_staddle(
      {"advise", support::in_source_tree("scenarios/tables/two_plans.json"), "--prove"});
  CHECK(run.exit_code == 2);
  CHECK(run.err.find("--prove") != std::string::npos);
}

}  // namespace
}  // namespace staddle
