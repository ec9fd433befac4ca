// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cstdlib>
#include <regex>

#include "scenarios/without_count.h"
#include "support/files.h"
#include "support/program.h"

// Reports as the built program writes them, compared with report_golden. After a change
// that is meant, STADDLE_REFRESH=1 (see golden_test.cpp) writes them anew: read the
// difference, and look at the page in a browser.
namespace staddle {
namespace {

using support::in_source_tree;
using support::read_file;
using support::without_count;

std::string written(const std::string& scenario, const std::string& file,
                    const std::vector<std::string>& more = {}) {
  std::vector<std::string> words{"report", in_source_tree(scenario), "-o", file};
  words.insert(words.end(), more.begin(), more.end());
  const support::Run run = support::run_staddle(words);
  CHECK(run.err == "");
  REQUIRE(run.exit_code == 0);
  return without_count(read_file(file));
}

void compare(const std::string& text, const std::string& name) {
  CAPTURE(name);
  const std::string golden = in_source_tree("tests/scenarios/report_golden/" + name);
  if (std::getenv("STADDLE_REFRESH") != nullptr) support::write_file(golden, text);
  CHECK(text == read_file(golden));
}

TEST_CASE("reports are written as the golden files say") {
  const support::TemporaryDirectory folder;
  compare(written("scenarios/stand/juniper_creek.json", folder.path("a.html")),
          "juniper_creek.html");
  compare(written("scenarios/stand/near_the_coast.json", folder.path("a.md")),
          "near_the_coast.markdown");
  compare(written("scenarios/stand/bare_land.json", folder.path("a.txt")), "bare_land.txt");
  compare(written("scenarios/tract/sweetgum_fork.json", folder.path("t.md")),
          "sweetgum_fork.markdown");
}

TEST_CASE("the summaries of all scenarios are those of the golden file") {
  const support::TemporaryDirectory folder;
  std::string all;
  for (const std::string& name : support::files_in_source_tree("scenarios/stand", ".json")) {
    all += written("scenarios/stand/" + name, folder.path("a.txt"), {"--summary"}) + "\n";
  }
  compare(all, "summaries.txt");
}

TEST_CASE("the same scenario gives the same page to the byte wherever it lies") {
  const support::TemporaryDirectory folder;
  const std::string scenario = "scenarios/stand/own_yield_table.json";
  const std::string first = written(scenario, folder.path("a.html"));
  CHECK(written(scenario, folder.path("b.html"), {"--threads", "1"}) == first);
  const std::string copy =
      folder.write("own_yield_table.json", read_file(in_source_tree(scenario)));
  folder.write("own_yield_table.csv",
               read_file(in_source_tree("scenarios/stand/own_yield_table.csv")));
  const support::Run run = support::run_staddle({"report", copy, "-o", folder.path("c.html")});
  REQUIRE(run.exit_code == 0);
  CHECK(without_count(read_file(folder.path("c.html"))) == first);
  CHECK(first.find("own_yield_table.csv</h3>") != std::string::npos);
}

}  // namespace
}  // namespace staddle
