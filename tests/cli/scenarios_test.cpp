// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "cli/run_here.h"
#include "support/files.h"

namespace staddle {
namespace {

using support::Run;
using support::run_staddle;

// The scenario files that come with the project, faulty ones or sound ones.
std::vector<std::string> scenarios(bool faulty) {
  std::vector<std::string> paths;
  for (const std::string& name : support::files_in_source_tree("scenarios", ".json")) {
    const std::string path = support::in_source_tree("scenarios/" + name);
    const bool is_scenario =
        support::read_file(path).find("staddle-scenario/1") != std::string::npos;
    if (name.starts_with("invalid/") == faulty && (faulty || is_scenario)) paths.push_back(path);
  }
  return paths;
}

TEST_CASE("every scenario that comes with the project is answered in text and in JSON") {
  REQUIRE(scenarios(false).size() >= 8);
  for (const std::string& path : scenarios(false)) {
    CAPTURE(path);
    const Run text = run_staddle({"advise", path});
    CHECK(text.exit_code == 0);
    CHECK(text.err.empty());
    CHECK(text.out.find("\n 1. ") != std::string::npos);
    const Run json = run_staddle({"advise", path, "--format", "json"});
    CHECK(json.exit_code == 0);
    const auto advice = nlohmann::json::parse(json.out);
    CHECK(advice["format"] == "staddle-advice/1");
    CHECK(advice["certificate"]["gap_usd_ac"] == 0.0);
  }
}

TEST_CASE("every scenario that comes with the project grows and has nothing wrong") {
  for (const std::string& path : scenarios(false)) {
    CAPTURE(path);
    for (const std::string format : {"text", "csv", "json"}) {
      const Run run = run_staddle({"grow", path, "--format", format});
      CHECK(run.exit_code == 0);
      CHECK(std::count(run.out.begin(), run.out.end(), '\n') > 1);
    }
    CHECK(run_staddle({"check", path}).out.starts_with(path + ": nothing wrong\n"));
    const Run json = run_staddle({"check", path, "--format", "json"});
    CHECK(nlohmann::json::parse(json.out)["faults"].empty());
  }
}

TEST_CASE("every faulty scenario is refused and nothing is written") {
  REQUIRE(scenarios(true).size() >= 10);
  const support::TemporaryDirectory folder;
  for (const std::string& path : scenarios(true)) {
    CAPTURE(path);
    const Run checked = run_staddle({"check", path});
    CHECK(checked.exit_code == 3);
    CHECK(checked.out.empty());
    CHECK(!checked.err.empty());
    const Run advised = run_staddle({"advise", path, "-o", folder.path("out.txt")});
    CHECK(advised.exit_code == 3);
    CHECK(advised.out.empty());
    CHECK(advised.err == checked.err);
    CHECK(support::names_in(folder.path()).empty());
  }
}

TEST_CASE("a run prints the same bytes again whatever the folder and the language") {
  const std::string path = support::in_source_tree("scenarios/stand/juniper_creek.json");
  const support::TemporaryDirectory folder;
  for (const std::string format : {"text", "json"}) {
    CAPTURE(format);
    const std::vector<std::string> words{"advise", path, "--format", format};
    const std::string printed = run_staddle(words).out;
    CHECK(run_staddle(words).out == printed);
    CHECK(support::run_staddle_in(folder.path(), words).out == printed);
    for (const std::string locale : {"C", "de_DE.UTF-8"}) {
      CAPTURE(locale);
      CHECK(support::run_shell("LC_ALL=\"$1\"; export LC_ALL; exec \"$STADDLE\" advise \"$2\" "
                               "--format \"$3\"",
                               {locale, path, format})
                .out == printed);
    }
  }
}

}  // namespace
}  // namespace staddle
