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

const std::string next_stand = in_source_tree("scenarios/plant/next_stand.json");

const std::string two_ways = R"("establishment": {"alternatives": [
  {"name": "dear", "years_gained": 1,
   "practices": [{"what": "all", "age_yr": 0, "usd_ac": 400}]},
  {"name": "cheap", "practices": [{"what": "all", "age_yr": 0, "usd_ac": 150},
                                  {"what": "release", "age_yr": 3, "usd_ac": 40}]}]},)";

json result_of(const std::vector<std::string>& words, const std::string& input = "") {
  const Run run = run_staddle(words, input);
  REQUIRE(run.err.empty());
  REQUIRE(run.exit_code == 0);
  return json::parse(run.out);
}

}  // namespace

TEST_CASE("the plant result has what its format promises") {
  const json result = result_of({"plant", next_stand, "--format", "json"});
  CHECK(result.at("format") == "staddle-plant/1");
  std::size_t shut = 0;
  for (const json& one : result.at("alternatives")) {
    CAPTURE(one.at("name"));
    CHECK(one.at("establishment_usd_ac").is_number());
    if (one.at("best").is_null()) {
      ++shut;
      CHECK(one.at("rank").is_null());
      CHECK(one.at("reason").is_string());
      continue;
    }
    const json& plan = one.at("best");
    CHECK(plan.at("forest_value_usd_ac").is_null());
    for (const char* key : {"thinnings", "final_harvest_age_yr", "land_expectation_value_usd_ac",
                            "net_present_value_usd_ac"}) {
      CHECK(plan.contains(key));
    }
    CHECK(one.at("rank").is_number_unsigned());
    CHECK(one.at("loss_against_best_usd_ac").get<double>() >= 0.0);
    for (const char* key : {"key", "value", "reason"}) {
      CHECK(one.at("break_even").contains(key));
    }
  }
  CHECK(shut == 1);  // the beds: nothing is stated of wet ground
  for (const json& gate : result.at("gates")) {
    CHECK(gate.at("topic").is_string());
    CHECK(gate.at("text").is_string());
  }
  CHECK(result.at("species").size() == 5);
}

TEST_CASE("every way is worth what advise says of the scenario with it in use") {
  const json result = result_of({"plant", "-", "--format", "json"}, bare_land(two_ways));
  for (const json& one : result.at("alternatives")) {
    for (const bool standing : {false, true}) {
      json scenario = json::parse((standing ? standing_stand : bare_land)(two_ways));
      scenario["establishment"]["use"] = one.at("name");
      const json alone = result_of({"plant", "-", "--format", "json"}, scenario.dump());
      const json advice = result_of({"advise", "-", "--format", "json"}, scenario.dump());
      for (const json& again : alone.at("alternatives")) {
        if (again.at("name") != one.at("name")) continue;
        CHECK(advice.at("best").at("land_expectation_value_usd_ac") ==
              again.at("best").at("land_expectation_value_usd_ac"));
      }
    }
  }
}

TEST_CASE("the best way is written to a new file that every command then follows") {
  const TemporaryDirectory folder;
  const std::string file = folder.path("planted.json");
  const json result = result_of({"plant", next_stand, "--format", "json", "--to", file});
  const json written = json::parse(read_file(file));
  CHECK(written.at("establishment").at("use") == result.at("best"));
  const json advice = result_of({"advise", file, "--format", "json"});
  for (const json& one : result.at("alternatives")) {
    if (one.at("rank") != 1) continue;
    CHECK(advice.at("best").at("land_expectation_value_usd_ac") ==
          one.at("best").at("land_expectation_value_usd_ac"));
  }
  CHECK(result_of({"plant", file, "--format", "json"}).at("used") == result.at("best"));
  const Run again = run_staddle({"plant", next_stand, "--to", file});
  CHECK(again.exit_code == 2);
  CHECK(again.err.find("is not overwritten") != std::string::npos);
}

TEST_CASE("a yield table beside the scenario is found from the new file's folder") {
  const TemporaryDirectory folder;
  const std::string home = folder.path() + "/home", away = folder.path() + "/away";
  run_shell("mkdir \"$1\" \"$2\"", {home, away});
  json scenario = json::parse(read_file(in_source_tree("scenarios/stand/own_yield_table.json")),
                              nullptr, true, true);
  scenario["establishment"] = json::parse(
      R"({"alternatives": [{"name": "burn", "methods": ["burn"],
          "practices": [{"what": "burn", "age_yr": 0, "usd_ac": 40}]}]})");
  const std::string table = scenario.at("stand").at("yield_table");
  write_file(home + "/" + table, read_file(in_source_tree("scenarios/stand/" + table)));
  write_file(home + "/own.json", scenario.dump());
  CHECK(run_staddle({"plant", home + "/own.json", "--to", away + "/own.json"}).exit_code == 0);
  CHECK(json::parse(read_file(away + "/own.json")).at("stand").at("yield_table") ==
        "../home/" + table);
  CHECK(run_staddle({"check", away + "/own.json"}).exit_code == 0);
}

TEST_CASE("a scenario without the block is told how to ask") {
  const Run run = run_staddle({"plant", "-"}, bare_land());
  CHECK(run.exit_code == 3);
  CHECK(run.err.find("/establishment") != std::string::npos);
  CHECK(run.err.find("\"establishment\": {}") != std::string::npos);
}

TEST_CASE("where every way is shut the command ends without a plan and writes nothing") {
  const TemporaryDirectory folder;
  const Run run = run_staddle({"plant", "-", "--to", folder.path("a.json")},
                              bare_land(R"("establishment": {"alternatives":
                                [{"from": "plant-600-bed", "name": "beds"}]},)"));
  CHECK(run.exit_code == 4);
  CHECK(run.err.find("site.wet_site_statement") != std::string::npos);
  CHECK(names_in(folder.path()).empty());
}

TEST_CASE("the exhaustive comparison says the same to the byte and so does one thread") {
  const std::string text = bare_land(two_ways);
  const std::string plain = run_staddle({"plant", "-", "--format", "json"}, text).out;
  CHECK(run_staddle({"plant", "-", "--format", "json", "--exhaustive"}, text).out == plain);
  CHECK(run_staddle({"plant", "-", "--format", "json", "--threads", "1"}, text).out == plain);
}

TEST_CASE("the table has a line per way in the order of the file") {
  const Run run = run_staddle({"plant", "-", "--format", "csv"}, bare_land(two_ways));
  CHECK(run.exit_code == 0);
  CHECK(run.out.starts_with("name,rank,"));
  CHECK(run.out.find("\ndear,") < run.out.find("\ncheap,"));
}

TEST_CASE("money after tax stands beside every amount of a comparison") {
  const json result =
      result_of({"plant", "-", "--format", "json"}, bare_land(two_ways + "\"tax\": {},"));
  for (const json& one : result.at("alternatives")) {
    CHECK(one.at("best").contains("after_tax"));
    CHECK(one.at("after_tax").at("establishment_usd_ac").get<double>() <
          one.at("establishment_usd_ac").get<double>());
    CHECK(one.at("after_tax").contains("loss_against_best_usd_ac"));
  }
  CHECK(result.at("as_stated").at("best").contains("after_tax"));
}

}  // namespace staddle::support
