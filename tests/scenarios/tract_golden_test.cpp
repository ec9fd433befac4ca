// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cstdlib>
#include <regex>

#include "support/files.h"
#include "support/program.h"

// Every tract of scenarios/tract is answered by the built program, and the answer is
// compared with tract_golden. STADDLE_REFRESH=1 (see golden_test.cpp) writes them anew.
namespace staddle {
namespace {

using support::in_source_tree;
using support::read_file;

std::vector<std::string> tracts() {
  std::vector<std::string> names;
  for (const std::string& name : support::files_in_source_tree("scenarios/tract", ".json")) {
    const std::string text = read_file(in_source_tree("scenarios/tract/" + name));
    if (text.find("\"staddle-tract/1\"") != std::string::npos) names.push_back(name);
  }
  return names;
}

// Which regimes are met on the way depends on the last bits, the plan does not.
std::string without_counts(const std::string& text) {
  const std::regex counts(
      "[0-9,]+(\\s+regimes\\s+entered\\s+the\\s+linear\\s+program\\s+in\\s+)[0-9,]+");
  return std::regex_replace(text, counts, "some$1some");
}

TEST_CASE("every tract is answered as the golden file says") {
  REQUIRE(tracts().size() >= 3);
  for (const std::string& tract : tracts()) {
    CAPTURE(tract);
    const support::Run run =
        support::run_staddle({"tract", in_source_tree("scenarios/tract/" + tract)});
    CHECK(run.err.empty());
    CHECK(run.exit_code == (tract == "too_much_asked.json" ? 4 : 0));
    const std::string golden =
        in_source_tree("tests/scenarios/tract_golden/" +
                       tract.substr(0, tract.size() - std::string(".json").size()) + ".txt");
    if (std::getenv("STADDLE_REFRESH") != nullptr) {
      support::write_file(golden, without_counts(run.out));
    }
    CHECK(without_counts(run.out) == read_file(golden));
  }
}

TEST_CASE("every tract says what it is for and is named in the readme") {
  const std::string readme = read_file(in_source_tree("README.md"));
  for (const std::string& tract : tracts()) {
    CAPTURE(tract);
    const std::string text = read_file(in_source_tree("scenarios/tract/" + tract));
    CHECK(text.starts_with("// SPDX-License-Identifier: GPL-3.0-or-later\n"));
    CHECK(text.find("\"purpose\": \"") != std::string::npos);
    CHECK(readme.find(tract) != std::string::npos);
  }
}

}  // namespace
}  // namespace staddle
