// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "cli/run_here.h"
#include "support/files.h"

namespace staddle {
namespace {

using support::Run;
using support::run_staddle;

bool contains(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

// A wrong command line: exit 2, nothing on standard output, and the message.
void check_refused(const std::vector<std::string>& words, const std::string& message) {
  CAPTURE(words);
  const Run run = run_staddle(words);
  CHECK(run.exit_code == 2);
  CHECK(run.out.empty());
  INFO(run.err);
  CHECK(contains(run.err, message));
}

TEST_CASE("a missing or misspelt command is refused and the nearest is named") {
  check_refused({}, "a command is missing");
  check_refused({"advice"}, "did you mean advise?");
  check_refused({"chekc", "a.json"}, "did you mean check?");
  check_refused({"help", "grwo"}, "did you mean grow?");
  check_refused({"fell"}, "unknown command \"fell\"");
  check_refused({""}, "unknown command \"\"");
}

TEST_CASE("an unknown option is refused and the nearest is named") {
  check_refused({"advise", "a.json", "--fromat", "json"}, "unknown option --fromat");
  check_refused({"advise", "a.json", "--fromat", "json"}, "did you mean --format?");
  check_refused({"--fromat", "json", "advise", "a.json"}, "did you mean --format?");
  check_refused({"advise", "a.json", "-x"}, "unknown option -x");
  check_refused({"models", "--exhaustive"}, "unknown option --exhaustive");
}

TEST_CASE("an option is not guessed from its beginning") {
  check_refused({"advise", "a.json", "--exh"}, "unknown option --exh");
  check_refused({"advise", "a.json", "--exh"}, "did you mean --exhaustive?");
}

TEST_CASE("an option with a wrong value or none or given twice is refused") {
  check_refused({"advise", "a.json", "--format", "yaml"}, "not one of: text, json");
  check_refused({"grow", "a.json", "--format=cvs"}, "did you mean csv?");
  check_refused({"advise", "a.json", "--format"}, "--format");
  check_refused({"advise", "a.json", "--format="}, "--format");
  check_refused({"advise", "a.json", "--exhaustive=yes"}, "--exhaustive");
  check_refused({"advise", "a.json", "--format", "text", "--format", "text"}, "stands twice");
}

TEST_CASE("a missing file name or one word too many is refused") {
  check_refused({"advise"}, "SCENARIO is missing");
  check_refused({"check"}, "FILE is missing");
  check_refused({"advise", "a.json", "b.json"}, "one word too many: \"b.json\"");
  check_refused({"models", "a", "b"}, "one word too many: \"b\"");
}

TEST_CASE("a name that stands nowhere is refused and the nearest is named") {
  check_refused({"models", "loblolly-planted-costal"}, "did you mean loblolly-planted-coastal?");
  const support::TemporaryDirectory folder;
  const std::string file = folder.write(
      "a.json",
      support::bare_land(
          R"("regimes": [{"name": "early", "final_harvest_age_yr": 25, "thinnings": []}],)"));
  check_refused({"grow", file, "--regime", "earl"}, "did you mean early?");
  check_refused({"grow", file, "--regime", "earl"}, "\"best\", \"none\", \"early\"");
}

TEST_CASE("options may stand before and after the command and between its words") {
  const support::TemporaryDirectory folder;
  const std::string file = folder.write("a.json", support::bare_land());
  const Run after = run_staddle({"grow", file, "--format", "csv", "--regime=none"});
  CHECK(after.exit_code == 0);
  CHECK(run_staddle({"--format", "csv", "grow", "--regime", "none", file}).out == after.out);
  CHECK(run_staddle({"--format=csv", "--regime=none", "grow", file}).out == after.out);
}

TEST_CASE("after two dashes nothing is an option") {
  const support::TemporaryDirectory folder;
  folder.write("--format", support::bare_land());
  const Run run = support::run_staddle_in(folder.path(), {"check", "--", "--format"});
  CHECK(run.exit_code == 0);
  CHECK(run.out.starts_with("--format: nothing wrong\n"));
  CHECK(support::run_staddle_in(folder.path(), {"--", "check", "--format"}).exit_code == 0);
}

TEST_CASE("an answer is never written over its own question") {
  const support::TemporaryDirectory folder;
  const std::string file = folder.write("a.json", support::bare_land());
  check_refused({"advise", file, "-o", file}, "would overwrite the input");
  check_refused({"check", file, "-o", folder.path("./a.json")}, "would overwrite the input");
  CHECK(support::read_file(file) == support::bare_land());
}

}  // namespace
}  // namespace staddle
