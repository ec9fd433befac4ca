// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "support/files.h"
#include "support/near.h"
#include "support/not_run.h"
#include "support/program.h"

namespace staddle::support {
namespace {

using nlohmann::json;

const std::string coast = in_source_tree("scenarios/storm/half_or_a_third.json");

Run storm(std::vector<std::string> options, const std::string& scenario = coast) {
  options.insert(options.begin(), {"storm", scenario});
  return run_staddle(options);
}

bool contains(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

// The scenario with the first occurrence of a text replaced.
std::string altered(const std::string& from, const std::string& to) {
  std::string text = read_file(coast);
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

}  // namespace

TEST_CASE("the storm command answers every scenario of its folder") {
  const auto files = files_in_source_tree("scenarios/storm", ".json");
  REQUIRE(files.size() >= 2);
  for (const std::string& file : files) {
    CAPTURE(file);
    const Run run =
        storm({"--futures", "500", "--choices"}, in_source_tree("scenarios/storm/" + file));
    CHECK(run.exit_code == 0);
    CHECK(run.err.empty());
    CHECK(contains(run.out, "what storms may do"));
  }
}

TEST_CASE("the storm result has what its format promises") {
  const json result =
      json::parse(storm({"--format", "json", "--futures", "4000", "--seed", "3", "--choices"}).out);
  CHECK(result.at("format") == "staddle-storm/1");
  CHECK(result.at("futures") == 4000);
  CHECK(result.at("seed") == 3);
  CHECK(result.at("zone") == "coast");
  REQUIRE(result.at("perils").size() == 4);
  CHECK(result.at("perils")[1].at("annual_probability") == 0.008);
  const json& regimes = result.at("regimes");
  REQUIRE(regimes.size() == 4);
  const std::vector<std::string> names{"best", "half removed", "a third removed", "unthinned"};
  for (std::size_t i = 0; i < 4; ++i) {
    const json& regime = regimes[i];
    CAPTURE(names[i]);
    CHECK(regime.at("name") == names[i]);
    const double expected = regime.at("expected_value_usd_ac");
    const double mean = regime.at("simulated_mean_usd_ac");
    const double error = regime.at("standard_error_usd_ac");
    CHECK(regime.at("plan").at("forest_value_usd_ac") == expected);
    CHECK(error > 0.0);
    CHECK(mean == within(expected, 4 * error));
    CHECK(regime.at("difference_usd_ac").get<double>() == within(mean - expected, 1e-9));
    const json& q = regime.at("quantiles_usd_ac");
    double below = q.at("p05");
    for (const char* name : {"p25", "p50", "p75", "p95"}) {
      CHECK(q.at(name) >= below);
      below = q.at(name);
    }
    CHECK(regime.at("chance_half_lost") > 0.0);
    CHECK(regime.at("chance_half_lost") < 1.0);
    CHECK(regime.at("worst_event").at("usd_ac") > 0.0);
    CHECK(regime.at("worst_event").at("age_yr") <= 30);
    CHECK(regime.at("choices_mean_usd_ac").is_number());
    const json& years = regime.at("annual_loss_fraction");
    REQUIRE(years.size() == 14);
    CHECK(years.front().at("age_yr") == 17);
    CHECK(years.back().at("age_yr") == 30);
    if (i == 3) {
      for (const json& year : years) CHECK(year.at("with_plan") == year.at("unthinned"));
    }
  }
  // Half removed is hit harder than a third, the year after.
  CHECK(regimes[1].at("annual_loss_fraction")[1].at("with_plan") >
        regimes[2].at("annual_loss_fraction")[1].at("with_plan"));
}

TEST_CASE("the storm command writes the same bytes for any number of threads") {
  for (const char* format : {"text", "json", "csv"}) {
    CAPTURE(format);
    const auto with = [&](const char* threads) {
      return storm({"--futures", "20000", "--choices", "--format", format, "--threads", threads})
          .out;
    };
    const std::string one = with("1");
    CHECK_FALSE(one.empty());
    CHECK(with("2") == one);
    CHECK(with("7") == one);
  }
}

TEST_CASE("the storm table has a line for each plan") {
  const Run run = storm({"--futures", "500", "--format", "csv"});
  REQUIRE(run.exit_code == 0);
  std::size_t lines = 0;
  for (const char c : run.out) lines += c == '\n';
  CHECK(lines == 5);
  CHECK(contains(run.out, "half removed,17:0.5,30,"));
  CHECK(contains(run.out, "\"hurricane, major\""));
}

TEST_CASE("without a storm zone the storm command names the zones and exits with 3") {
  const TemporaryDirectory folder;
  const std::string calm = folder.write(
      "calm.json", altered("\"zone\": \"coast\", \"species\": \"loblolly\"", "\"zone\": \"none\""));
  const Run run = storm({}, calm);
  CHECK(run.exit_code == 3);
  CHECK(run.out.empty());
  CHECK(contains(run.err, "/storm/zone"));
  for (const char* zone : {"coast", "coast-sheltered", "near-inland", "inland", "ice-belt"}) {
    CHECK(contains(run.err, zone));
  }
}

TEST_CASE("a stated plan that is impossible is named with its place") {
  const TemporaryDirectory folder;
  const std::string impossible = folder.write(
      "impossible.json",
      altered("\"removal_fraction\": 0.3333333333333333 }], \"final_harvest_age_yr\": 30",
              "\"removal_fraction\": 0.3333333333333333 }], \"final_harvest_age_yr\": 17"));
  const Run run = storm({}, impossible);
  CHECK(run.exit_code == 3);
  CHECK(contains(run.err, "/regimes/1"));
}

TEST_CASE("numbers of futures and seeds and threads keep their limits") {
  for (const std::vector<std::string>& options : {std::vector<std::string>{"--futures", "1"},
                                                  {"--futures", "10000001"},
                                                  {"--futures", "1e5"},
                                                  {"--futures", "-5"},
                                                  {"--futures", ""},
                                                  {"--futures", "12x"},
                                                  {"--seed", "-1"},
                                                  {"--seed", "9007199254740993"},
                                                  {"--threads", "1025"},
                                                  {"--threads", "two"}}) {
    CAPTURE(options[0], options[1]);
    const Run run = storm({options[0] + "=" + options[1]});
    CHECK(run.exit_code == 2);
    CHECK(run.out.empty());
    CHECK(contains(run.err, options[0]));
  }
  CHECK(storm({"--futures", "2", "--seed", "9007199254740992", "--threads", "1024"}).exit_code ==
        0);
}

TEST_CASE("the futures show a bar on a terminal and none in a pipe") {
  CHECK(storm({"--futures", "50000"}).err.empty());
  if (!program_exists("script")) return not_run("script is not installed");
  // script runs the command on a terminal of its own and passes on what it shows.
  const Run run = run_program(
      "script", {"-qec", std::string(STADDLE_BINARY) + " storm '" + coast + "' --futures 50000",
                 "/dev/null"});
  CHECK(run.exit_code == 0);
  CHECK(contains(run.out, "drawing futures [#"));
  CHECK(contains(run.out, "what storms may do"));
}

}  // namespace staddle::support
