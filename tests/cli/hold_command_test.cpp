// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "cli/run_here.h"
#include "support/files.h"

namespace staddle {
namespace {

using Json = nlohmann::ordered_json;
using support::Run;
using support::run_staddle;

Json held(const std::string& scenario) {
  const Run run = run_staddle({"hold", "-", "--format", "json"}, scenario);
  INFO(run.err);
  REQUIRE(run.exit_code == 0);
  return Json::parse(run.out);
}

TEST_CASE("hold tells every year with every key that the format promises") {
  const Json result = held(support::standing_stand());
  CHECK(result["format"] == "staddle-hold/1");
  CHECK(result["years"].front()["age_yr"] == 15);
  CHECK(result["years"].back()["age_yr"] == 32);
  for (const Json& row : result["years"]) {
    for (const std::string key :
         {"age_yr", "tons_ac", "stumpage_usd_ac", "growth_usd_ac", "value_growth_fraction",
          "required_fraction", "forest_value_if_cut_usd_ac", "loss_against_best_usd_ac"}) {
      CAPTURE(key);
      CHECK(row.contains(key));
    }
    CHECK(row["growth_usd_ac"].contains("volume"));
    CHECK(row["growth_usd_ac"].contains("step_up"));
    CHECK_FALSE(row.contains("after_tax"));
  }
  CHECK(result.contains("matures_at_age_yr"));
  CHECK(result["after_best_thinning"]["years"].size() > 1);
}

TEST_CASE("the value growth of a year can be worked out from the row and the next") {
  const Json years = held(support::standing_stand())["years"];
  for (std::size_t i = 0; i + 1 < years.size(); ++i) {
    const double now = years[i]["stumpage_usd_ac"];
    const double next = years[i + 1]["stumpage_usd_ac"];
    // Eight dollars of annual cost unless the scenario says otherwise.
    const double stated = years[i]["value_growth_fraction"];
    const double cost = next - now - stated * now;
    CHECK(cost == Approx(8.0).margin(1e-6));
  }
}

TEST_CASE("the sentence on waiting names the gain and the rate") {
  const Run run = run_staddle({"hold", "-"}, support::standing_stand());
  CHECK(run.exit_code == 0);
  CHECK(run.out.find("If you wait 3 more years you gain $") != std::string::npos);
  CHECK(run.out.find("/ac, about ") != std::string::npos);
  CHECK(run.out.find(" % a year.") != std::string::npos);
}

TEST_CASE("hold comes as CSV with a row a year for both ledgers") {
  const Run run = run_staddle({"hold", "-", "--format", "csv"}, support::standing_stand());
  CHECK(run.exit_code == 0);
  const Json result = held(support::standing_stand());
  const auto lines = std::count(run.out.begin(), run.out.end(), '\n');
  CHECK(static_cast<std::size_t>(lines) ==
        1 + result["years"].size() + result["after_best_thinning"]["years"].size());
}

TEST_CASE("bare land is refused with exit 3") {
  const Run run = run_staddle({"hold", "-"}, support::bare_land());
  CHECK(run.exit_code == 3);
  CHECK(run.out.empty());
  CHECK(run.err.find("/stand") != std::string::npos);
}

TEST_CASE("with a tax block every row of hold stands before and after tax") {
  const Json result =
      held(support::standing_stand(R"("tax": {"basis_usd_ac": 100, "long_term_rate": 0.2},)"));
  const Json& row = result["years"][0];
  const double value = row["stumpage_usd_ac"];
  CHECK(row["after_tax"]["stumpage_usd_ac"].get<double>() == Approx(value - 0.2 * (value - 100)));
  for (const std::string key : {"stumpage_usd_ac", "growth_usd_ac", "forest_value_if_cut_usd_ac",
                                "loss_against_best_usd_ac"}) {
    CHECK(row["after_tax"].contains(key));
    CHECK(result["after_best_thinning"]["years"][0]["after_tax"].contains(key));
  }
  const Run text =
      run_staddle({"hold", "-"}, support::standing_stand(R"("tax": {"basis_usd_ac": 100},)"));
  CHECK(text.out.find("not tax advice") != std::string::npos);
}

}  // namespace
}  // namespace staddle
