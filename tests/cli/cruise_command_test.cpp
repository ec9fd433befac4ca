// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "cli/run_here.h"
#include "support/files.h"
#include "support/near.h"

namespace staddle {
namespace {

using Json = nlohmann::ordered_json;
using support::in_source_tree;
using support::Run;
using support::run_staddle;

std::string points() { return in_source_tree("scenarios/cruise/prism_points.csv"); }
std::string economics() { return in_source_tree("scenarios/cruise/economics.json"); }

Run cruise(const std::vector<std::string>& more, const std::string& input = "") {
  std::vector<std::string> words{"cruise"};
  words.insert(words.end(), more.begin(), more.end());
  return run_staddle(words, input);
}

Json appraised(std::vector<std::string> words, const std::string& input = "") {
  words.insert(words.end(), {"--format", "json"});
  const Run run = cruise(words, input);
  INFO(run.err);
  REQUIRE(run.exit_code == 0);
  return Json::parse(run.out);
}

const std::vector<std::string> whole{
    points(), "--basal-area-factor", "10", "--economics", economics(), "--age-yr", "17"};

std::vector<std::string> with(std::vector<std::string> words,
                              const std::vector<std::string>& more) {
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

std::string reason_of(const Json& result, const std::string& key) {
  for (const Json& missing : result["missing"]) {
    if (missing["key"] == key) return missing["reason"];
  }
  return "";
}

TEST_CASE("a cruise has every key that the format promises") {
  const Json result = appraised(whole);
  CHECK(result["format"] == "staddle-cruise/1");
  for (const std::string key :
       {"plots", "basal_area_ft2_ac", "tpa", "tons_ac", "stumpage_usd_ac", "calibration", "qmd_in",
        "mean_dbh_in", "dominant_height_ft", "live_crown_ratio", "site_index_ft", "plots_needed",
        "stand_table", "ready", "ready_judgement", "assumed"}) {
    CAPTURE(key);
    REQUIRE(result.contains(key));
    CHECK_FALSE(result[key].is_null());
  }
  for (const Json& estimate : {result["basal_area_ft2_ac"], result["tpa"],
                               result["tons_ac"]["pulpwood"], result["stumpage_usd_ac"]}) {
    for (const std::string key :
         {"mean", "standard_error", "coefficient_of_variation", "interval_90", "interval_95"}) {
      CHECK(estimate.contains(key));
    }
    CHECK(estimate["interval_90"].size() == 2);
  }
  CHECK(result["acres"] == 38.0);
  CHECK(result["plots"] == 12);
  CHECK_FALSE(result.contains("after_tax"));
}

TEST_CASE("without model and age the figures that need them are null and say why") {
  const Json result = appraised({points(), "--basal-area-factor", "10"});
  for (const std::string key : {"tons_ac", "stumpage_usd_ac", "calibration", "site_index_ft"}) {
    CAPTURE(key);
    CHECK(result[key].is_null());
    CHECK_FALSE(reason_of(result, key).empty());
  }
  CHECK(result["basal_area_ft2_ac"]["mean"].get<double>() == Approx(125.8333333));
}

TEST_CASE("a model and an age alone give tons and no dollars") {
  const Json result = appraised({points(), "--basal-area-factor", "10", "--model",
                                 "loblolly-planted-upland", "--age-yr", "17"});
  CHECK(result["model"] == "loblolly-planted-upland");
  CHECK(result["tons_ac"].is_object());
  CHECK(result["stumpage_usd_ac"].is_null());
}

TEST_CASE("the stand table comes as CSV and adds up to the stand") {
  const Run run = cruise(with(whole, {"--format", "csv"}));
  REQUIRE(run.exit_code == 0);
  CHECK(
      run.out.starts_with("dbh_class_in,tpa,basal_area_ft2_ac,sawtimber_tons_ac,"
                          "chip_n_saw_tons_ac,pulpwood_tons_ac,usd_ac\r\n"));
}

TEST_CASE("strata weigh by the acres of the command line in one option or several") {
  const std::string plots = in_source_tree("scenarios/cruise/plots_in_two_parts.csv");
  const Json once =
      appraised({plots, "--plot-acres", "0.1", "--stratum-acres", "ridge=30", "bottom=10"});
  const Json twice = appraised({"--plot-acres", "0.1", "--stratum-acres", "ridge=30",
                                "--stratum-acres", "bottom=10", plots});
  CHECK(once == twice);
  CHECK(once["acres"] == 40.0);
  CHECK(once["strata"][0]["weight"] == 0.75);
  const Json by_plots = appraised({plots, "--plot-acres", "0.1"});
  CHECK(by_plots["strata"][0]["weight"].get<double>() == Approx(8.0 / 14));
  const std::string assumed = by_plots["assumed"].dump();
  CHECK(assumed.find("ridge") != std::string::npos);
}

TEST_CASE("a scenario written from a cruise is advised on") {
  const support::TemporaryDirectory folder;
  const std::string written = folder.path("stand.json");
  const Json result = appraised(with(whole, {"--to", written}));
  const Run advice = run_staddle({"advise", written, "--format", "json"});
  INFO(advice.err);
  REQUIRE(advice.exit_code == 0);
  const Json answer = Json::parse(advice.out);
  CHECK(answer["present_age_yr"] == 17);
  CHECK(answer["acres"] == 38.0);
  const Json stand = Json::parse(support::read_file(written), nullptr, true, true)["stand"];
  CHECK(stand["tpa"] == result["tpa"]["mean"]);
  CHECK(stand["basal_area_ft2_ac"] == result["basal_area_ft2_ac"]["mean"]);
  CHECK(stand["dominant_height_ft"] == result["dominant_height_ft"]);
  CHECK(stand["live_crown_ratio"] == result["live_crown_ratio"]);
  CHECK(stand["planted_tpa"] == 605);
  // The signs of the cruise are those of the advice, crown cover aside.
  for (const Json& sign : answer["ready"]) {
    for (const Json& other : result["ready"]) {
      if (other["sign"] != sign["sign"]) continue;
      CAPTURE(sign.dump(), other.dump());
      CHECK(sign["value"].get<double>() == Approx(other["value"].get<double>()));
      CHECK(sign["verdict"] == other["verdict"]);
      CHECK(sign["about_age_yr"] == other["about_age_yr"]);
    }
  }
}

TEST_CASE("the plots of a scenario give the same stand as the cruise that writes one") {
  const support::TemporaryDirectory folder;
  const std::string written = folder.path("stand.json");
  REQUIRE(cruise(with(whole, {"--to", written})).exit_code == 0);
  const Json from_numbers = Json::parse(run_staddle({"advise", written, "--format", "json"}).out);
  const Json from_plots =
      Json::parse(run_staddle({"advise", in_source_tree("scenarios/cruise/from_plots.json"),
                               "--format", "json"})
                      .out);
  CHECK(from_plots["best"] == from_numbers["best"]);
  CHECK_FALSE(from_numbers.contains("plots"));
  for (const std::string key : {"low", "high", "same_advice", "more_plots"}) {
    CHECK(from_plots["plots"].contains(key));
  }
}

TEST_CASE("a scenario is never written over another file or without age and economics") {
  const support::TemporaryDirectory folder;
  const std::string there = folder.write("there.json", "mine");
  CHECK(cruise(with(whole, {"--to", there})).exit_code == 2);
  CHECK(support::read_file(there) == "mine");
  const std::string fresh = folder.path("new.json");
  CHECK(
      cruise({points(), "--basal-area-factor", "10", "--age-yr", "17", "--to", fresh}).exit_code ==
      2);
  CHECK(cruise({points(), "--basal-area-factor", "10", "--economics", economics(), "--to", fresh})
            .exit_code == 2);
  CHECK(cruise(with(whole, {"--to", fresh, "-o", fresh})).exit_code == 2);
  CHECK(support::names_in(folder.path()) == std::vector<std::string>{"there.json"});
}

TEST_CASE("a cruise without heights is written where the economics name the site") {
  const support::TemporaryDirectory folder;
  const std::string bare =
      "plot,tree_dbh_in\n1,8\n1,7\n1,9\n1,8\n1,8\n1,7\n1,7\n2,8\n2,9\n2,8\n2,8\n";
  const std::string written = folder.path("stand.json");
  const Run run = cruise({"-", "--basal-area-factor", "20", "--economics", economics(), "--age-yr",
                          "17", "--to", written},
                         bare);
  INFO(run.err);
  CHECK(run.exit_code == 0);
  CHECK(support::read_file(written).find("site_index_ft") != std::string::npos);
}

TEST_CASE("each wrong word of a cruise is refused with exit 2") {
  const std::vector<std::vector<std::string>> wrong = {
      {points()},
      {points(), "--basal-area-factor", "10", "--plot-acres", "0.1"},
      {points(), "--basal-area-factor", "0"},
      {points(), "--basal-area-factor", "ten"},
      {points(), "--plot-acres", "-1"},
      {points(), "--plot-radius-ft", "nan"},
      {points(), "--basal-area-factor", "10", "--age-yr", "0"},
      {points(), "--basal-area-factor", "10", "--age-yr", "17.5"},
      {points(), "--basal-area-factor", "10", "--model", "loblolly"},
      {points(), "--basal-area-factor", "10", "--error", "0"},
      {points(), "--basal-area-factor", "10", "--confidence", "1"},
      {points(), "--basal-area-factor", "10", "--acres", "0"},
      {points(), "--basal-area-factor", "10", "--stratum-acres", "nowhere=10"},
      {points(), "--basal-area-factor", "10", "--stratum-acres", "a=ten"},
      {"-", "--basal-area-factor", "10", "--economics", "-"},
      {points(), "--basal-area-factor", "10", "-o", points()}};
  for (const auto& words : wrong) {
    const Run run = cruise(words);
    CAPTURE(words, run.err);
    CHECK(run.exit_code == 2);
    CHECK(run.out.empty());
    CHECK_FALSE(run.err.empty());
  }
}

TEST_CASE("acres that contradict the strata are refused") {
  const std::string plots = in_source_tree("scenarios/cruise/plots_in_two_parts.csv");
  CHECK(cruise({plots, "--plot-acres", "0.1", "--stratum-acres", "ridge=30", "bottom=10", "--acres",
                "50"})
            .exit_code == 2);
}

TEST_CASE("a faulty tally is refused with exit 3 and its line and column") {
  const Run run = cruise({"-", "--basal-area-factor", "10"}, "plot,tree_dbh_in\n1,8\n1,x\n");
  CHECK(run.exit_code == 3);
  CHECK(run.out.empty());
  CHECK(run.err.find("standard input: line 3, column tree_dbh_in: ") != std::string::npos);
  CHECK(cruise({"not_there.csv", "--basal-area-factor", "10"}).exit_code == 3);
}

TEST_CASE("with a tax block the money of a cruise stands before and after tax") {
  const support::TemporaryDirectory folder;
  std::string text = support::read_file(economics());
  text.insert(text.rfind('}'), ", \"tax\": {\"basis_usd_ac\": 100}\n");
  const std::string taxed = folder.write("taxed.json", text);
  const Json result =
      appraised({points(), "--basal-area-factor", "10", "--economics", taxed, "--age-yr", "17"});
  const double gross = result["stumpage_usd_ac"]["mean"];
  CHECK(result["after_tax"]["stumpage_usd_ac"]["mean"].get<double>() ==
        Approx(gross - 0.15 * (gross - 100)));
  double rows = 0.0;
  for (const Json& row : result["stand_table"]) rows += row["after_tax"]["usd_ac"].get<double>();
  CHECK(rows == Approx(gross - 0.15 * (gross - 100)));
}

}  // namespace
}  // namespace staddle
