// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "cli/run_here.h"

namespace staddle {
namespace {

using Json = nlohmann::ordered_json;
using support::Run;
using support::run_staddle;

Json advised(const std::string& scenario) {
  const Run run = run_staddle({"advise", "-", "--format", "json"}, scenario);
  INFO(run.err);
  REQUIRE(run.exit_code == 0);
  return Json::parse(run.out);
}

double usd(const Json& value) { return value.get<double>(); }

TEST_CASE("a tax block leaves the plan and adds money after tax beside it") {
  for (const auto stand : {support::bare_land, support::standing_stand}) {
    const Json plain = advised(stand(""));
    const Json taxed = advised(stand(R"("tax": {},)"));
    CHECK(plain["best"]["final_harvest_age_yr"] == taxed["best"]["final_harvest_age_yr"]);
    CHECK(plain["best"]["net_present_value_usd_ac"] == taxed["best"]["net_present_value_usd_ac"]);
    CHECK_FALSE(plain["best"].contains("after_tax"));
    const Json& money = taxed["best"]["after_tax"];
    for (const std::string key : {"land_expectation_value_usd_ac", "forest_value_usd_ac",
                                  "net_present_value_usd_ac", "equal_annual_equivalent_usd_ac"}) {
      CHECK(money.contains(key));
    }
    for (const Json& thinning : taxed["best"]["thinnings"]) {
      CHECK(usd(thinning["after_tax"]["revenue_usd_ac"]) ==
            Approx(0.85 * usd(thinning["revenue_usd_ac"])));
    }
    for (const Json& line : taxed["best"]["cash_flow"]) CHECK(line.contains("after_tax"));
    for (const Json& other : taxed["alternatives"]) {
      CHECK(other["after_tax"].contains("loss_against_best_usd_ac"));
    }
    for (const Json& survival : taxed["survives"]) {
      CHECK(survival["after_tax"].contains("kept_plan_loss_usd_ac"));
      CHECK(survival["best"].contains("after_tax"));
    }
    for (const Json& guard : taxed["guard_costs"]) CHECK(guard.contains("after_tax"));
  }
}

TEST_CASE("the best plan after tax is worth no less after tax than the best before it") {
  for (const std::string tax :
       {R"("tax": {},)", R"("tax": {"basis_usd_ac": 400},)",
        R"("tax": {"long_term_rate": 0.3, "ordinary_rate": 0.1, "basis_usd_ac": 900},)"}) {
    CAPTURE(tax);
    const Json taxed = advised(support::standing_stand(tax));
    CHECK(usd(taxed["best_after_tax"]["after_tax"]["forest_value_usd_ac"]) >=
          usd(taxed["best"]["after_tax"]["forest_value_usd_ac"]) - 1e-9);
    CHECK(usd(taxed["best_after_tax"]["forest_value_usd_ac"]) <=
          usd(taxed["best"]["forest_value_usd_ac"]) + 1e-9);
  }
}

TEST_CASE("the text stands before and after tax side by side and gives no advice on it") {
  const Run run = run_staddle({"advise", "-"}, support::standing_stand(R"("tax": {},)"));
  CHECK(run.exit_code == 0);
  CHECK(run.out.find("Before and after federal tax") != std::string::npos);
  CHECK(run.out.find("not tax advice") != std::string::npos);
}

TEST_CASE("each wrong value of the tax block is refused with its place") {
  for (const auto& [tax, place] : std::vector<std::pair<std::string, std::string>>{
           {R"("tax": {"long_term_rate": 1},)", "/tax/long_term_rate"},
           {R"("tax": {"ordinary_rate": -0.1},)", "/tax/ordinary_rate"},
           {R"("tax": {"inflation": "high"},)", "/tax/inflation"},
           {R"("tax": {"basis_usd_ac": -1},)", "/tax/basis_usd_ac"},
           {R"("tax": {"basis_tons_ac": 0},)", "/tax/basis_tons_ac"},
           {R"("tax": {"reforestation_deduction": 1},)", "/tax/reforestation_deduction"},
           {R"("tax": {"basis": 1},)", "/tax/basis"},
           {R"("tax": 0.15,)", "/tax"}}) {
    const Run run = run_staddle({"advise", "-"}, support::standing_stand(tax));
    CAPTURE(tax, run.err);
    CHECK(run.exit_code == 3);
    CHECK(run.err.find(place + ": ") != std::string::npos);
  }
}

TEST_CASE("a basis counts nothing on bare land and the answer says so") {
  const Json without = advised(support::bare_land(R"("tax": {},)"));
  const Json with = advised(support::bare_land(R"("tax": {"basis_usd_ac": 500},)"));
  CHECK(without["best"] == with["best"]);
  CHECK(with["assumed"].dump().find("/tax/basis_usd_ac") != std::string::npos);
}

}  // namespace
}  // namespace staddle
