// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>

#include "cli/run_here.h"
#include "support/files.h"

namespace staddle {
namespace {

using support::bare_land;
using support::Run;
using support::run_staddle;

// A wrong input: exit 3, nothing written, each line a fault that begins with its file.
void check_wrong_input(const std::string& path, const std::string& message) {
  CAPTURE(path);
  for (const std::string command : {"advise", "grow", "check"}) {
    CAPTURE(command);
    const Run run = run_staddle({command, path});
    CHECK(run.exit_code == 3);
    CHECK(run.out.empty());
    INFO(run.err);
    CHECK(run.err.starts_with(path));
    CHECK(run.err.find(message) != std::string::npos);
  }
}

TEST_CASE("a file that cannot be read is a wrong input") {
  const support::TemporaryDirectory folder;
  check_wrong_input(folder.path("nowhere.json"), "cannot be read: No such file or directory");
  check_wrong_input(folder.path(), "is a directory, not a file");
  check_wrong_input("/dev/zero", "is larger than 64 megabytes");
  // It can be opened, and its first byte cannot be read.
  check_wrong_input("/proc/self/mem", "cannot be read: Input/output error");
}

TEST_CASE("an empty or truncated or binary file is a wrong input") {
  const support::TemporaryDirectory folder;
  check_wrong_input(folder.write("empty.json", ""), "empty");
  check_wrong_input(folder.write("cut.json", bare_land().substr(0, 200)), "line");
  check_wrong_input(folder.write("binary.json", std::string("\x00\x7f\x45\x4c\x46\xff\xfe", 7)),
                    "UTF-8");
  check_wrong_input(folder.write("deep.json", std::string(100000, '[')), "more than 64 deep");
}

TEST_CASE("all faults of a file come in one run and one line each") {
  const support::TemporaryDirectory folder;
  const std::string file =
      folder.write("a.json", bare_land(R"("acers": 1, "purpose": 5, "site": {"soil": "silt"},)"));
  const Run run = run_staddle({"check", file});
  CHECK(run.exit_code == 3);
  for (const std::string pointer : {"/acers", "/purpose", "/site/soil"}) {
    CAPTURE(pointer);
    CHECK(run.err.find(file + ": " + pointer + ": ") != std::string::npos);
  }
  CHECK(std::count(run.err.begin(), run.err.end(), '\n') == 3);
  CHECK(run_staddle({"advise", file}).err == run.err);
  CHECK(run_staddle({"grow", file}).err == run.err);
}

TEST_CASE("a stated regime that cannot be carried out is a wrong input to check and to advise") {
  const support::TemporaryDirectory folder;
  const std::string file =
      folder.write("a.json", bare_land(
                                 R"("regimes": [{"name": "to nothing", "final_harvest_age_yr": 30,
         "thinnings": [{"age_yr": 16, "residual_tpa": 30},
                       {"age_yr": 22, "removal_fraction": 0.9},
                       {"age_yr": 27, "removal_fraction": 0.9}]},
         {"name": "backwards", "final_harvest_age_yr": 20,
         "thinnings": [{"age_yr": 25, "removal_fraction": 0.3}]}],)"));
  for (const std::string command : {"check", "advise"}) {
    CAPTURE(command);
    const Run run = run_staddle({command, file});
    CHECK(run.exit_code == 3);
    CHECK(run.out.empty());
    CHECK(run.err.find("/regimes/1") != std::string::npos);
  }
}

TEST_CASE("a control character of a file name does nothing to the terminal") {
  const Run run = run_staddle({"check", "no\nsuch\x1b[31mfile"});
  CHECK(run.exit_code == 3);
  CHECK(run.err == "no\\x0asuch\\x1b[31mfile: cannot be read: No such file or directory\n");
}

TEST_CASE("a scenario may come from standard input") {
  const support::TemporaryDirectory folder;
  const std::string file = folder.write("a.json", bare_land());
  const Run run = run_staddle({"advise", "-", "--format", "json"}, bare_land());
  CHECK(run.exit_code == 0);
  CHECK(run.out == run_staddle({"advise", file, "--format", "json"}).out);
  CHECK(run_staddle({"check", "-"}, "{").err.starts_with("standard input: "));
}

std::string table_scenario(const std::string& table) {
  return R"({"format": "staddle-scenario/1", "title": "Table", "acres": 40,
    "stand": {"yield_table": ")" +
         table + R"("},
    "economics": {"real_discount_rate": 0.05, "establishment_usd_ac": 350,
    "stumpage_usd_per_ton": {"pulp": 7, "saw": 18}}})";
}

std::string table_rows(int last_age) {
  std::string rows = "age_yr,dominant_height_ft,tpa,basal_area_ft2_ac,saw_tons_ac,pulp_tons_ac\n";
  for (int at = 5; at <= last_age; at += 5) {
    rows += std::to_string(at) + "," + std::to_string(3 * at) + "," + std::to_string(600 - 5 * at) +
            "," + std::to_string(6 * at) + "," + std::to_string(at - 5) + "," +
            std::to_string(3 * at) + "\n";
  }
  return rows;
}

TEST_CASE("a table is found beside its scenario whatever the working directory") {
  const support::TemporaryDirectory folder, elsewhere;
  folder.write("table.csv", table_rows(40));
  const std::string file = folder.write("a.json", table_scenario("table.csv"));
  const Run run = support::run_staddle_in(elsewhere.path(), {"advise", file, "--format", "json"});
  CHECK(run.exit_code == 0);
  CHECK(support::run_staddle_in(folder.path(), {"advise", "a.json", "--format", "json"}).out ==
        run.out);
}

TEST_CASE("a table that is missing or faulty is a fault of the scenario's run") {
  const support::TemporaryDirectory folder;
  const std::string missing = folder.write("a.json", table_scenario("nowhere.csv"));
  folder.write("table.csv", table_rows(40) + "41,1,1,1,-1,abc\n");
  const std::string faulty = folder.write("b.json", table_scenario("table.csv"));
  for (const std::string command : {"advise", "grow", "check"}) {
    CAPTURE(command);
    const Run run = run_staddle({command, missing});
    CHECK(run.exit_code == 3);
    CHECK(run.err.find("nowhere.csv") != std::string::npos);
    CHECK(run_staddle({command, faulty}).exit_code == 3);
  }
  const Run table = run_staddle({"check", folder.path("table.csv")});
  CHECK(table.exit_code == 3);
  CHECK(table.err.find("line 10") != std::string::npos);
}

TEST_CASE("check reads a yield table on its own") {
  const support::TemporaryDirectory folder;
  const Run run = run_staddle({"check", folder.write("table.csv", table_rows(40))});
  CHECK(run.exit_code == 0);
  CHECK(run.out == folder.path("table.csv") + ": nothing wrong\n");
}

TEST_CASE("a sound scenario without a regime that satisfies its limits is exit 4 with the reason") {
  const support::TemporaryDirectory folder;
  folder.write("table.csv", table_rows(15) + "18,54,510,108,13,54\n");
  const std::string file = folder.write("a.json", table_scenario("table.csv"));
  for (const std::string command : {"advise", "grow", "check"}) {
    CAPTURE(command);
    const Run run = run_staddle({command, file});
    CHECK(run.exit_code == 4);
    CHECK(run.out.empty());
    CHECK(run.err.starts_with(file + ": "));
    CHECK(run.err.find("the yield table ends at age 18, and the window of final harvests begins "
                       "at 20 (/decisions/final_harvest_age_yr, by default 20 to 45)") !=
          std::string::npos);
  }
  CHECK(run_staddle({"grow", file, "--regime", "none"}).exit_code == 0);
}

}  // namespace
}  // namespace staddle
