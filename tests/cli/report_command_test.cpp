// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <filesystem>

#include "support/files.h"
#include "support/program.h"

namespace staddle::support {
namespace {

using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

const std::string small_tract = "scenarios/stand/small_tract.json";

Run report(const std::vector<std::string>& more) {
  std::vector<std::string> words{"report", in_source_tree(small_tract)};
  words.insert(words.end(), more.begin(), more.end());
  return run_staddle(words);
}

TEST_CASE("the ending of the output file chooses the form of a report") {
  const TemporaryDirectory folder;
  for (const auto& [ending, start] : std::vector<std::pair<std::string, std::string>>{
           {".html", "<!doctype html>"}, {".md", "# "}, {".txt", ""}}) {
    CAPTURE(ending);
    const std::string file = folder.path("out" + ending);
    const Run run = report({"-o", file});
    CHECK(run.exit_code == 0);
    CHECK(run.out == "");
    CHECK_THAT(read_file(file), StartsWith(start));
  }
  CHECK(report({}).out == read_file(folder.path("out.txt")));
  CHECK(report({"-o", "-"}).out == read_file(folder.path("out.txt")));
  CHECK(report({"--format", "md"}).out == read_file(folder.path("out.md")));
  CHECK(report({"--format", "html", "-o", "-"}).out == read_file(folder.path("out.html")));
}

TEST_CASE("an ending that is no form of a report is refused with those allowed") {
  const TemporaryDirectory folder;
  for (const char* name : {"out.pdf", "out", "out.html.gz", ".html"}) {
    CAPTURE(name);
    const Run run = report({"-o", folder.path(name)});
    CHECK(run.exit_code == 2);
    CHECK_THAT(run.err, Contains(".html") && Contains(".md") && Contains(".txt"));
    CHECK_FALSE(std::filesystem::exists(folder.path(name)));
  }
}

TEST_CASE("a summary in every form is shorter than a screen") {
  const TemporaryDirectory folder;
  const Run run = report({"--summary"});
  CHECK(run.exit_code == 0);
  CHECK(std::count(run.out.begin(), run.out.end(), '\n') <= 12);
  CHECK(report({"--summary", "-o", folder.path("out.md")}).exit_code == 0);
  CHECK_THAT(read_file(folder.path("out.md")), StartsWith("# "));
  CHECK(report({"--summary", "-o", folder.path("out.html")}).exit_code == 0);
  CHECK_THAT(read_file(folder.path("out.html")), !Contains("<svg"));
}

TEST_CASE("faults of a scenario and of its stated plans are told and nothing is written") {
  const TemporaryDirectory folder;
  const std::string out = folder.path("out.html");
  const Run missing = run_staddle({"report", folder.path("none.json"), "-o", out});
  CHECK(missing.exit_code == 3);
  CHECK_THAT(missing.err, Contains("none.json"));
  const Run faulty = run_staddle(
      {"report", in_source_tree("scenarios/invalid/thinning-at-the-harvest.json"), "-o", out});
  CHECK(faulty.exit_code == 3);
  CHECK_THAT(faulty.err, Contains("/regimes/0"));
  CHECK_FALSE(std::filesystem::exists(out));
}

TEST_CASE("a tract has a report in every form") {
  const TemporaryDirectory folder;
  const std::string tract = in_source_tree("scenarios/tract/three_heirs.json");
  const Run page = run_staddle({"report", tract, "-o", folder.path("out.html")});
  CHECK(page.err == "");
  CHECK(page.exit_code == 0);
  const std::string text = read_file(folder.path("out.html"));
  CHECK_THAT(text, Contains("What the tract brings and costs, period by period") &&
                       Contains("<svg ") && Contains("three_heirs.json</h3>"));
  for (const char* name : {"out.xlsx", "out.ics"}) {
    CAPTURE(name);
    CHECK(run_staddle({"report", tract, "-o", folder.path(name)}).exit_code == 0);
    CHECK(std::filesystem::file_size(folder.path(name)) > 1000);
  }
}

TEST_CASE("a tract whose limits conflict has its report all the same and exit status 4") {
  const TemporaryDirectory folder;
  const Run run = run_staddle({"report", in_source_tree("scenarios/tract/too_much_asked.json"),
                               "-o", folder.path("out.md")});
  CHECK(run.exit_code == 4);
  CHECK_THAT(read_file(folder.path("out.md")), Contains("Limits that cannot all be kept"));
}

TEST_CASE("a stand has a spreadsheet and a calendar but no summary of them") {
  const TemporaryDirectory folder;
  const std::string stand = in_source_tree("scenarios/stand/juniper_creek.json");
  for (const char* name : {"out.xlsx", "out.ics"}) {
    CAPTURE(name);
    const Run run = run_staddle({"report", stand, "-o", folder.path(name)});
    CHECK(run.err == "");
    CHECK(run.exit_code == 0);
    CHECK(std::filesystem::file_size(folder.path(name)) > 1000);
    const Run summary = run_staddle({"report", stand, "--summary", "-o", folder.path(name)});
    CHECK(summary.exit_code == 2);
    CHECK_THAT(summary.err, Contains("no summary"));
  }
}

TEST_CASE("ways to start the next stand have sections of their own with a figure") {
  const TemporaryDirectory folder;
  const Run run = run_staddle(
      {"report", in_source_tree("scenarios/plant/next_stand.json"), "-o", folder.path("out.html")});
  CHECK(run.err == "");
  REQUIRE(run.exit_code == 0);
  CHECK_THAT(read_file(folder.path("out.html")),
             Contains("How to start the next stand</h2>") &&
                 Contains("What an acre of bare land is worth under each way") &&
                 Contains("Rules of time and law</h2>"));
}

TEST_CASE("a report never overwrites its own scenario") {
  const TemporaryDirectory folder;
  const std::string copy = folder.write("stand.txt", read_file(in_source_tree(small_tract)));
  const Run run = run_staddle({"report", copy, "-o", copy});
  CHECK(run.exit_code == 2);
  CHECK(read_file(copy) == read_file(in_source_tree(small_tract)));
}

TEST_CASE("a scenario from standard input makes the same report") {
  const Run run = run_staddle({"report", "-", "--summary"}, read_file(in_source_tree(small_tract)));
  CHECK(run.exit_code == 0);
  CHECK(run.out == report({"--summary"}).out);
}

}  // namespace
}  // namespace staddle::support
