// SPDX-License-Identifier: GPL-3.0-or-later
// Workbook and calendar as the command report writes them.
#include <catch2/catch.hpp>
#include <filesystem>

#include "support/files.h"
#include "support/program.h"

namespace staddle {
namespace {

using Catch::Matchers::Contains;
using support::run_staddle;

TEST_CASE("a calendar without the year of the present is refused and nothing is written") {
  const support::TemporaryDirectory folder;
  std::string text = support::read_file(support::in_source_tree("scenarios/stand/bare_land.json"));
  const std::size_t key = text.find("\"calendar_year\"");
  REQUIRE(key != std::string::npos);
  text.erase(key, text.find('\n', key) - key);
  const std::string scenario = folder.write("undated.json", text);
  const support::Run run = run_staddle({"report", scenario, "-o", folder.path("out.ics")});
  CHECK(run.exit_code == 3);
  CHECK_THAT(run.err, Contains("/calendar_year") && Contains("\"calendar_year\": 2027"));
  CHECK_FALSE(std::filesystem::exists(folder.path("out.ics")));
}

TEST_CASE("two reports of one stand are the same workbook and the same calendar to the byte") {
  const support::TemporaryDirectory folder;
  const std::string stand = support::in_source_tree("scenarios/stand/bare_land.json");
  for (const std::string ending : {".xlsx", ".ics"}) {
    CAPTURE(ending);
    CHECK(run_staddle({"report", stand, "--threads", "1", "-o", folder.path("one" + ending)})
              .exit_code == 0);
    CHECK(run_staddle({"report", stand, "--threads", "2", "-o", folder.path("two" + ending)})
              .exit_code == 0);
    CHECK(support::read_file(folder.path("one" + ending)) ==
          support::read_file(folder.path("two" + ending)));
  }
}

TEST_CASE("a workbook that cannot take its place leaves nothing behind") {
  const support::TemporaryDirectory folder;
  const std::string stand = support::in_source_tree("scenarios/stand/bare_land.json");
  const support::Run run = run_staddle({"report", stand, "-o", folder.path("no/where/out.xlsx")});
  CHECK(run.exit_code == 1);
  CHECK_THAT(run.err, Contains("cannot be written"));
  CHECK(std::filesystem::is_empty(folder.path()));
}

}  // namespace
}  // namespace staddle
