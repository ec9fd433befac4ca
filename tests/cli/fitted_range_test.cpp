// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <optional>

#include "cli/run_here.h"
#include "support/near.h"

namespace staddle {
namespace {

using Json = nlohmann::ordered_json;
using support::run_staddle;

Json scenario_with(const std::string& scenario, const std::string& place, const Json& value) {
  Json changed = Json::parse(scenario);
  changed[Json::json_pointer(place)] = value;
  return changed;
}

Json outside_of(const Json& scenario) {
  const support::Run run = run_staddle({"advise", "-", "--format", "json"}, scenario.dump());
  INFO(run.err);
  REQUIRE(run.exit_code == 0);
  return Json::parse(run.out)["model"]["outside_fitted_range"];
}

// How far the plan of this name leans beyond the range.
std::optional<double> leaning(const Json& outside, const std::string& of, const std::string& what) {
  for (const Json& entry : outside) {
    if (entry["of"] == of && entry["what"] == what) return entry["value"].get<double>();
  }
  return std::nullopt;
}

TEST_CASE("trees planted beyond the fitted range are told of bare land") {
  for (const double planted : {1500.0, 4000.0}) {
    const Json outside =
        outside_of(scenario_with(support::bare_land(), "/stand/planted_tpa", planted));
    CHECK(leaning(outside, "best", "tpa").value_or(0) == support::relative(planted, 1e-12));
    CHECK(leaning(outside, "best", "age_yr") > 25.0);
  }
  CHECK(!leaning(outside_of(Json::parse(support::bare_land())), "best", "tpa"));
}

TEST_CASE("the stand planted after the harvest says itself where it leans beyond the range") {
  const Json outside =
      outside_of(scenario_with(support::standing_stand(), "/stand/planted_tpa", 3000));
  CHECK(leaning(outside, "successor", "tpa").value_or(0) == support::relative(3000.0, 1e-12));
  CHECK(leaning(outside, "successor", "age_yr") > 25.0);
  CHECK(!leaning(outside, "best", "tpa"));
}

TEST_CASE("a stated regime says itself where it leans beyond the range") {
  const std::string scenario = support::standing_stand(
      R"("regimes": [{"name": "few trees for long", "final_harvest_age_yr": 80,
        "thinnings": [{"age_yr": 20, "residual_tpa": 35}]}],)");
  const Json outside = outside_of(Json::parse(scenario));
  CHECK(leaning(outside, "few trees for long", "age_yr") == 80.0);
  CHECK(leaning(outside, "few trees for long", "tpa") < 36.0);
  const std::string text = run_staddle({"advise", "-"}, scenario).out;
  CHECK(text.find("\"few trees for long\" on 80") != std::string::npos);
}

TEST_CASE("the best with another number of thinnings says itself where it leans too far") {
  const Json outside = outside_of(Json::parse(support::standing_stand()));
  CHECK((leaning(outside, "no thinning", "age_yr") || leaning(outside, "one thinning", "age_yr")));
}

TEST_CASE("years beyond the fitted range are told of the rows of a stand that grows") {
  const std::string scenario = support::standing_stand();
  const Json json = Json::parse(
      run_staddle({"grow", "-", "--regime", "none", "--format", "json"}, scenario).out);
  CHECK(leaning(json["outside_fitted_range"], "none", "age_yr") == 32.0);
  const std::string text = run_staddle({"grow", "-", "--regime", "none"}, scenario).out;
  CHECK(text.find("fitted to ages of 10 to 25 years") != std::string::npos);
  CHECK(text.find("these rows reach 32") != std::string::npos);
}

TEST_CASE("rows within the fitted range say nothing of it") {
  const std::string within = support::standing_stand(
      R"("regimes": [{"name": "early", "final_harvest_age_yr": 24, "thinnings": []}],)");
  const Json json = Json::parse(
      run_staddle({"grow", "-", "--regime", "early", "--format", "json"}, within).out);
  CHECK(json["outside_fitted_range"].empty());
  CHECK(run_staddle({"grow", "-", "--regime", "early"}, within).out.find("fitted") ==
        std::string::npos);
}

}  // namespace
}  // namespace staddle
