// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cstdlib>
#include <regex>

#include "scenarios/without_count.h"
#include "support/files.h"
#include "support/program.h"

// Every scenario of scenarios/stand is answered by the built program, and the answer is
// compared with golden/<name>.txt. After a change that is meant:
//   STADDLE_REFRESH=1 ctest --test-dir build/test -R scenarios
// writes them anew; read what git diff shows before it is committed.
namespace staddle {
namespace {

using support::in_source_tree;
using support::read_file;
using support::without_count;

std::vector<std::string> stand_scenarios() {
  return support::files_in_source_tree("scenarios/stand", ".json");
}

std::string golden_of(const std::string& scenario) {
  return in_source_tree("tests/scenarios/golden/" +
                        scenario.substr(0, scenario.size() - std::string(".json").size()) + ".txt");
}

TEST_CASE("every scenario is answered as the golden file says") {
  REQUIRE(stand_scenarios().size() >= 8);
  const bool refresh = std::getenv("STADDLE_REFRESH") != nullptr;
  for (const std::string& scenario : stand_scenarios()) {
    CAPTURE(scenario);
    const support::Run run =
        support::run_staddle({"advise", in_source_tree("scenarios/stand/" + scenario)});
    REQUIRE(run.exit_code == 0);
    CHECK(run.err.empty());
    if (refresh) support::write_file(golden_of(scenario), without_count(run.out));
    CHECK(without_count(run.out) == read_file(golden_of(scenario)));
  }
}

TEST_CASE("no golden answer is left over from a scenario that is gone") {
  const std::vector<std::string> answers =
      support::files_in_source_tree("tests/scenarios/golden", ".txt");
  CHECK(answers.size() == stand_scenarios().size());
}

TEST_CASE("every scenario says what it is for and passes the check") {
  for (const std::string& scenario : stand_scenarios()) {
    CAPTURE(scenario);
    const std::string path = in_source_tree("scenarios/stand/" + scenario);
    const std::string text = read_file(path);
    CHECK(text.starts_with("// SPDX-License-Identifier: GPL-3.0-or-later\n"));
    CHECK(text.find("\"purpose\": \"") != std::string::npos);
    const support::Run run = support::run_staddle({"check", path});
    CHECK(run.exit_code == 0);
    CHECK(run.out.find("nothing wrong") != std::string::npos);
  }
}

}  // namespace
}  // namespace staddle
