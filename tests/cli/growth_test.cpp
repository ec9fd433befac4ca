// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <sstream>

#include "cli/run_here.h"
#include "support/files.h"
#include "support/near.h"

namespace staddle {
namespace {

using Json = nlohmann::ordered_json;
using support::Run;
using support::run_staddle;

const char* const one_cut =
    R"("regimes": [{"name": "one cut", "final_harvest_age_yr": 28,
        "thinnings": [{"age_yr": 17, "removal_fraction": 0.3}]}],)";

std::string grown(const std::string& scenario, const std::string& regime,
                  const std::string& format) {
  const Run run = run_staddle({"grow", "-", "--regime", regime, "--format", format}, scenario);
  INFO(run.err);
  REQUIRE(run.exit_code == 0);
  return run.out;
}

Json rows_of(const std::string& scenario, const std::string& regime) {
  const Json result = Json::parse(grown(scenario, regime, "json"));
  REQUIRE(result["format"] == "staddle-growth/1");
  return result["rows"];
}

TEST_CASE("a stand is told year by year from the present to the final harvest") {
  const Json rows = rows_of(support::standing_stand(one_cut), "none");
  CHECK(rows.front()["age_yr"] == 15);
  CHECK(rows.back()["age_yr"] == 32);
  CHECK(rows.size() == 18);
  for (const Json& row : rows) {
    for (const std::string key :
         {"age_yr", "calendar_year", "when", "tons_ac", "stumpage_usd_ac", "tpa",
          "basal_area_ft2_ac", "qmd_in", "dominant_height_ft", "live_crown_ratio"}) {
      CAPTURE(key);
      CHECK(row.contains(key));
    }
    CHECK(row["when"].is_null());
    CHECK(row["calendar_year"] == 2027 + row["age_yr"].get<int>() - 15);
  }
}

TEST_CASE("a year with a cut has two rows and what was cut lies between them") {
  const std::string scenario = support::standing_stand(one_cut);
  const Json rows = rows_of(scenario, "one cut");
  CHECK(rows.size() == 15);
  CHECK(rows[2]["when"] == "before cut");
  CHECK(rows[3]["when"] == "after cut");
  CHECK(rows[2]["age_yr"] == rows[3]["age_yr"]);
  const Json advice = Json::parse(run_staddle({"advise", "-", "--format", "json"}, scenario).out);
  const Json& thinning = advice["regimes"][0]["thinnings"][0];
  double cut_value = 0.0;
  const Json prices{{"pulpwood", 7}, {"chip_n_saw", 18}, {"sawtimber", 25}};
  for (const auto& [product, tons] : thinning["tons_ac"].items()) {
    CAPTURE(product);
    CHECK(rows[2]["tons_ac"][product].get<double>() - rows[3]["tons_ac"][product].get<double>() ==
          support::within(tons.get<double>(), 1e-9));
    cut_value += tons.get<double>() * prices[product].get<double>();
  }
  CHECK(rows[2]["stumpage_usd_ac"].get<double>() - rows[3]["stumpage_usd_ac"].get<double>() ==
        support::within(cut_value, 1e-9));
  CHECK(rows[3]["basal_area_ft2_ac"].get<double>() ==
        support::relative(0.7 * rows[2]["basal_area_ft2_ac"].get<double>(), 1e-12));
}

TEST_CASE("the best regime is the default and is the one that advise finds") {
  const std::string scenario = support::standing_stand();
  const Json best = Json::parse(grown(scenario, "best", "json"));
  CHECK(Json::parse(run_staddle({"grow", "-", "--format", "json"}, scenario).out) == best);
  const Json advice =
      Json::parse(run_staddle({"advise", "-", "--format", "json"}, scenario).out)["best"];
  CHECK(best["regime"]["final_harvest_age_yr"] == advice["final_harvest_age_yr"]);
  CHECK(best["rows"].back()["tons_ac"] == advice["final_harvest"]["tons_ac"]);
}

TEST_CASE("growth as CSV holds the numbers of the JSON under headings with their units") {
  const std::string scenario = support::standing_stand(one_cut);
  std::istringstream csv(grown(scenario, "one cut", "csv"));
  std::string line;
  std::getline(csv, line);
  CHECK(line ==
        "age_yr,calendar_year,when,sawtimber_tons_ac,chip_n_saw_tons_ac,pulpwood_tons_ac,"
        "stumpage_usd_ac,tpa,basal_area_ft2_ac,qmd_in,dominant_height_ft,live_crown_ratio\r");
  for (const Json& row : rows_of(scenario, "one cut")) {
    REQUIRE(std::getline(csv, line));
    std::vector<std::string> cells;
    std::istringstream stream(line.substr(0, line.size() - 1));
    for (std::string cell; std::getline(stream, cell, ',');) cells.push_back(cell);
    REQUIRE(cells.size() == 12);
    CHECK(cells[0] == row["age_yr"].dump());
    CHECK(cells[2] == (row["when"].is_null() ? "" : row["when"].get<std::string>()));
    CHECK(std::stod(cells[3]) == row["tons_ac"]["sawtimber"].get<double>());
    CHECK(std::stod(cells[6]) == row["stumpage_usd_ac"].get<double>());
    CHECK(std::stod(cells[11]) == row["live_crown_ratio"].get<double>());
  }
  CHECK(!std::getline(csv, line));
}

TEST_CASE("with a storm zone the rows say what share still stands") {
  const Json rows = rows_of(support::standing_stand(R"("storm": {"zone": "coast"},)"), "none");
  CHECK(rows.front()["share_standing"] == 1.0);
  CHECK(rows.back()["share_standing"] < 1.0);
  CHECK(grown(support::standing_stand(R"("storm": {"zone": "coast"},)"), "none", "csv")
            .find(",share_standing,") != std::string::npos);
}

TEST_CASE("growth as text opens with year and age then tons and dollars then the stand") {
  const std::string text = grown(support::standing_stand(one_cut), "one cut", "text");
  // The line of the units, in the order of the columns.
  const std::size_t units = text.find("      years ");
  REQUIRE(units != std::string::npos);
  std::size_t last = units;
  for (const std::string unit : {"tons/acre", "$/acre", "feet", "per acre", "inches", "percent"}) {
    CAPTURE(unit);
    const std::size_t at = text.find(unit, units);
    REQUIRE(at != std::string::npos);
    CHECK(at > last);
    last = at;
  }
  CHECK(text.find("year    age") < units);
  CHECK(text.find("before cut") != std::string::npos);
}

TEST_CASE("a residual that the stand has not reached is told as nothing cut") {
  const std::string scenario = support::standing_stand(
      R"("regimes": [{"name": "to 200", "final_harvest_age_yr": 28,
        "thinnings": [{"age_yr": 18, "residual_basal_area_ft2_ac": 200}]}],)");
  const std::string grown_text = grown(scenario, "to 200", "text");
  CHECK(grown_text.find("to 200: nothing is cut at age 18, when the stand has not reached the "
                        "residual stated; final harvest at age 28") != std::string::npos);
  const std::string advice = run_staddle({"advise", "-"}, scenario).out;
  CHECK(advice.find("allowed 0") == std::string::npos);
}

TEST_CASE("regimes that may be meant are each listed in quotes") {
  const std::string scenario = support::standing_stand(
      R"("regimes": [{"name": "one cut, then wait", "final_harvest_age_yr": 28,
        "thinnings": []}],)");
  const Run wrong = run_staddle({"grow", "-", "--regime", "x"}, scenario);
  CHECK(wrong.exit_code == 2);
  CHECK(wrong.err.find("there are: \"best\", \"none\", \"one cut, then wait\"") !=
        std::string::npos);
}

TEST_CASE("a table of a fixed regime grows by its name and nothing else is known") {
  const std::string path = support::in_source_tree("scenarios/tables/two_plans.json");
  const Run best = run_staddle({"grow", path, "--format", "json"});
  REQUIRE(best.exit_code == 0);
  const Run named = run_staddle({"grow", path, "--regime", "thinned at 17", "--format", "json"});
  REQUIRE(named.exit_code == 0);
  CHECK(Json::parse(named.out)["regime"]["thinnings"].size() == 1);
  const Run uncut = run_staddle({"grow", path, "--regime", "none", "--format", "json"});
  REQUIRE(uncut.exit_code == 0);
  CHECK(Json::parse(uncut.out)["regime"]["thinnings"].empty());
  const Run wrong = run_staddle({"grow", path, "--regime", "thinned at 18"});
  CHECK(wrong.exit_code == 2);
  CHECK(wrong.err.find("did you mean thinned at 17?") != std::string::npos);
}

}  // namespace
}  // namespace staddle
