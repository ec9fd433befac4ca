// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>
#include <nlohmann/json.hpp>

#include "cli/run_here.h"
#include "support/files.h"

namespace staddle {
namespace {

using nlohmann::json;
using support::in_source_tree;
using support::Run;
using support::run_staddle;

// Every number of a result is finite: JSON has no other way to write one that is not.
void check_no_null_money(const json& object, const std::vector<std::string>& keys) {
  for (const std::string& key : keys) {
    CAPTURE(key);
    CHECK(object.at(key).is_number());
  }
}

json plan_of(const std::string& name, int exit_code) {
  const Run run =
      run_staddle({"tract", in_source_tree("scenarios/tract/" + name), "--format", "json"});
  CHECK(run.exit_code == exit_code);
  CHECK(run.err.empty());
  return json::parse(run.out);
}

TEST_CASE("a tract's plan has the keys of its format and sums that agree") {
  const json plan = plan_of("sweetgum_fork.json", 0);
  CHECK(plan["format"] == "staddle-tract-plan/1");
  CHECK(plan["status"] == "optimal");
  check_no_null_money(plan, {"present_value_usd", "bound_usd", "gap_fraction",
                             "unlimited_present_value_usd", "rounds", "columns"});
  CHECK(plan["unlimited_present_value_usd"] >= plan["present_value_usd"]);
  CHECK(plan["stands"].size() == 7);
  double present_value = 0;
  for (const json& stand : plan["stands"]) {
    for (const json& share : stand["regimes"]) {
      present_value += share["acres"].get<double>() * share["present_value_usd_ac"].get<double>();
      CHECK(share["plan"]["net_present_value_usd_ac"].is_number());
      CHECK(share["plan"].contains("thinnings"));
    }
  }
  CHECK(present_value == Approx(plan["present_value_usd"].get<double>()).epsilon(1e-9));
  REQUIRE(plan["periods"].size() == 4);
  REQUIRE(plan["years"].size() == 21);
  double income = 0;
  for (const json& year : plan["years"]) {
    if (year["from_year"] <= 5) income += year["income_usd"].get<double>();
  }
  CHECK(income == Approx(plan["periods"][0]["income_usd"].get<double>()).epsilon(1e-9));
  CHECK(income >= 5 * 55000 - 1e-3);
  for (const json& period : plan["periods"]) {
    CHECK(period["final_harvest_acres"].get<double>() <= 90 + 1e-6);
  }
  for (const json& cost : plan["limit_costs"]) {
    CHECK(cost["shadow_price"].get<double>() > 0);
    CHECK_FALSE(cost["text"].get<std::string>().empty());
  }
  CHECK_FALSE(plan["cautions"].empty());
}

TEST_CASE("limits that conflict are named with the most that can be had and status 4") {
  const json plan = plan_of("too_much_asked.json", 4);
  CHECK(plan["status"] == "infeasible");
  REQUIRE_FALSE(plan["conflicts"].empty());
  const json& conflict = plan["conflicts"][0];
  for (const char* key : {"limit", "period", "asked", "most_possible", "unit", "text"}) {
    CHECK(conflict.contains(key));
  }
  const Run text = run_staddle({"tract", in_source_tree("scenarios/tract/too_much_asked.json")});
  CHECK(text.exit_code == 4);
  CHECK(text.out.find("Limits that cannot all be kept") != std::string::npos);
  CHECK(text.out.find(conflict["text"].get<std::string>().substr(1, 30)) != std::string::npos);
}

TEST_CASE("whole stands have one regime each") {
  const json plan = plan_of("three_heirs.json", 0);
  for (const json& stand : plan["stands"]) CHECK(stand["regimes"].size() == 1);
  CHECK(plan["split_present_value_usd"].get<double>() >=
        plan["present_value_usd"].get<double>() - 1e-3);
}

TEST_CASE("the number of threads changes no byte of a plan") {
  const std::string path = in_source_tree("scenarios/tract/sweetgum_fork.json");
  for (const std::string format : {"text", "json", "csv"}) {
    CAPTURE(format);
    const Run one = run_staddle({"tract", path, "--threads", "1", "--format", format});
    CHECK(one.exit_code == 0);
    CHECK(one.out == run_staddle({"tract", path, "--threads", "3", "--format", format}).out);
  }
}

TEST_CASE("every regime in the program gives the same value as those that were needed") {
  const std::string path = in_source_tree("scenarios/tract/too_much_asked.json");
  const auto value = [&](const std::vector<std::string>& more) {
    std::vector<std::string> words{"tract", path, "--format", "json"};
    words.insert(words.end(), more.begin(), more.end());
    return json::parse(run_staddle(words).out)["present_value_usd"].get<double>();
  };
  CHECK(value({}) == Approx(value({"--exhaustive"})).epsilon(1e-6));
}

TEST_CASE("no time at all still gives a plan and its gap") {
  const Run run = run_staddle({"tract", in_source_tree("scenarios/tract/sweetgum_fork.json"),
                               "--max-seconds", "0.000001", "--format", "json"});
  CHECK(run.exit_code == 0);
  const json plan = json::parse(run.out);
  CHECK(plan["status"] == "limit reached");
  const json& gap = plan["gap_fraction"];
  CHECK((gap.is_null() || gap.get<double>() >= 0));
}

TEST_CASE("wrong words and wrong tracts are refused and nothing is written") {
  const std::string path = in_source_tree("scenarios/tract/sweetgum_fork.json");
  for (const std::vector<std::string>& words : {std::vector<std::string>{"--max-gap", "2"},
                                                {"--max-gap", "x"},
                                                {"--max-seconds", "0"},
                                                {"--max-seconds", "-1"},
                                                {"--threads", "x"},
                                                {"--format", "html"}}) {
    std::vector<std::string> all{"tract", path};
    all.insert(all.end(), words.begin(), words.end());
    const Run run = run_staddle(all);
    CHECK(run.exit_code == 2);
    CHECK(run.out.empty());
  }
  for (const std::string& name :
       support::files_in_source_tree("scenarios/invalid_tracts", ".json")) {
    CAPTURE(name);
    const std::string faulty = in_source_tree("scenarios/invalid_tracts/" + name);
    const Run run = run_staddle({"tract", faulty});
    CHECK(run.exit_code == 3);
    CHECK(run.out.empty());
    CHECK(run_staddle({"check", faulty}).err == run.err);
  }
  const Run stand = run_staddle({"tract", in_source_tree("scenarios/stand/juniper_creek.json")});
  CHECK(stand.exit_code == 3);
  CHECK(stand.err.find("staddle-tract/1") != std::string::npos);
}

TEST_CASE("a sound tract is checked and its defaults are listed") {
  const std::string path = in_source_tree("scenarios/tract/sweetgum_fork.json");
  const Run run = run_staddle({"check", path});
  CHECK(run.exit_code == 0);
  CHECK(run.out.starts_with(path + ": nothing wrong\n"));
  CHECK(run.out.find("/plan/whole_stands = false") != std::string::npos);
}

TEST_CASE("the table of a plan has a line for every period and every stand") {
  const Run run = run_staddle(
      {"tract", in_source_tree("scenarios/tract/sweetgum_fork.json"), "--format", "csv"});
  CHECK(run.exit_code == 0);
  const auto count = [&](const std::string& begin) {
    std::size_t lines = 0;
    for (std::size_t at = 0; (at = run.out.find("\n" + begin, at)) != std::string::npos; ++at) {
      ++lines;
    }
    return lines;
  };
  CHECK(run.out.starts_with("kind,from_year,to_year,stand,what,acres,"));
  CHECK(count("period,") == 4);
  CHECK(count("year,") == 21);
  CHECK(count("stand,") >= 7);
  CHECK(count("job,") >= 7);
}

}  // namespace
}  // namespace staddle
