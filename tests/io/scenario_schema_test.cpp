// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/scenario_schema.h"

#include <catch2/catch.hpp>
#include <cstdlib>
#include <set>

#include "support/files.h"

namespace staddle {
namespace {

// STADDLE_WRITE_SCHEMA=models/schema/scenario.schema.json, relative to where the test
// runs, makes the file anew; STADDLE_WRITE_TRACT_SCHEMA that of tracts.
void check_published(const std::string& what, std::span<const Option> options,
                     const char* variable) {
  const std::string schema = scenario_tests::schema_of(what, options);
  const std::string file = "models/schema/" + what + ".schema.json";
  if (const char* path = std::getenv(variable)) support::write_file(path, schema);
  INFO("Make it anew: " << variable << "=" << file << " build/tests/test_io");
  CHECK(support::read_file(support::in_source_tree(file)) == schema);
}

TEST_CASE("the published schema of scenarios says what the options say") {
  check_published("scenario", scenario_options(), "STADDLE_WRITE_SCHEMA");
}

TEST_CASE("the published schema of tracts says what the options say") {
  check_published("tract", tract_options(), "STADDLE_WRITE_TRACT_SCHEMA");
}

void check_options(std::span<const Option> options) {
  std::set<std::string> pointers;
  for (const Option& option : options) {
    CAPTURE(option.pointer);
    CHECK(pointers.insert(std::string(option.pointer)).second);
    CHECK_FALSE(option.meaning.empty());
    CHECK(option.allowed.bits != 0);
    CHECK_FALSE((option.required && !option.default_json.empty()));
    CHECK_FALSE((option.implied && !option.allowed.has(kinds::object)));
    const bool numbers = option.allowed.has(kinds::number | kinds::whole);
    const bool bounded = !(option.range == NumberRange{});
    CHECK((numbers || !bounded));
    CHECK(option.range.low <= option.range.high);
    // Its parent is an option too.
    const std::size_t slash = option.pointer.rfind('/');
    const std::string parent(option.pointer.substr(0, slash));
    CHECK((parent.empty() || pointers.count(parent) == 1));
  }
}

TEST_CASE("every option of a scenario is described once and holds its own default") {
  check_options(scenario_options());
}

TEST_CASE("every option of a tract is described once and holds its own default") {
  check_options(tract_options());
}

}  // namespace
}  // namespace staddle
