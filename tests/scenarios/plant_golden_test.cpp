// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cstdlib>

#include "support/files.h"
#include "support/program.h"

// What plant says of every scenario of scenarios/plant, compared with plant_golden/<name>.txt.
// STADDLE_REFRESH=1 (see golden_test.cpp) writes them anew: read the difference.
namespace staddle {
namespace {

using support::in_source_tree;

std::vector<std::string> plant_scenarios() {
  return support::files_in_source_tree("scenarios/plant", ".json");
}

TEST_CASE("ways to start the next stand are compared as the golden files say") {
  REQUIRE(plant_scenarios().size() >= 2);
  for (const std::string& scenario : plant_scenarios()) {
    CAPTURE(scenario);
    const support::Run run =
        support::run_staddle({"plant", in_source_tree("scenarios/plant/" + scenario)});
    REQUIRE(run.exit_code == 0);
    CHECK(run.err.empty());
    const std::string golden = in_source_tree("tests/scenarios/plant_golden/" +
                                              scenario.substr(0, scenario.rfind('.')) + ".txt");
    if (std::getenv("STADDLE_REFRESH") != nullptr) support::write_file(golden, run.out);
    CHECK(run.out == support::read_file(golden));
  }
}

TEST_CASE("no golden comparison is left over from a scenario that is gone") {
  CHECK(support::files_in_source_tree("tests/scenarios/plant_golden", ".txt").size() ==
        plant_scenarios().size());
}

}  // namespace
}  // namespace staddle
