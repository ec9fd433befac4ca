// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <sstream>

#include "cli/run_here.h"
#include "support/files.h"

namespace staddle {
namespace {

using support::Run;
using support::run_staddle;

const std::string stands =
    "name,acres,model,site_index_ft,planted_tpa,age_yr,tpa,basal_area_ft2_ac\n"
    "Field,30,loblolly-planted-coastal,70,600,,,\n"
    "Odd,30,loblolly-planted-coastal,7,600,,,\n"
    "Old,40,loblolly-planted-coastal,70,600,24,230,105\n";

class Folder {
 public:
  explicit Folder(const std::string& rows = stands) {
    support::write_file(scenario(), support::bare_land());
    support::write_file(table(), rows);
  }
  std::string scenario() const { return folder_.path("scenario.json"); }
  std::string table() const { return folder_.path("stands.csv"); }
  std::string path(const std::string& name) const { return folder_.path(name); }
  std::vector<std::string> names() const { return support::names_in(folder_.path()); }
  Run advise(std::vector<std::string> words) const {
    std::vector<std::string> all{"advise", scenario(), "--stands", table()};
    all.insert(all.end(), words.begin(), words.end());
    return run_staddle(all);
  }

 private:
  support::TemporaryDirectory folder_;
};

std::vector<nlohmann::json> parsed_lines(const std::string& text) {
  std::istringstream stream(text);
  std::vector<nlohmann::json> lines;
  for (std::string line; std::getline(stream, line);) lines.push_back(nlohmann::json::parse(line));
  return lines;
}

TEST_CASE("every row is answered and a faulty one ends the program with status 3") {
  const Folder folder;
  const Run run = folder.advise({});
  CHECK(run.exit_code == 3);
  const auto lines = parsed_lines(run.out);
  REQUIRE(lines.size() == 3);
  CHECK(lines[0]["format"] == "staddle-advice/1");
  CHECK(lines[0]["name"] == "Field");
  CHECK(lines[0]["line"] == 2);
  CHECK(lines[1].size() == 3);
  CHECK(lines[1]["errors"][0].get<std::string>().find("line 3, column site_index_ft") !=
        std::string::npos);
  CHECK(lines[2]["objective"] == "forest_value");
  CHECK(run.err == folder.table() +
                       ": 1 of 3 stands have faults; their lines say why, and the rest are "
                       "answered\n");
}

TEST_CASE("a file of answers is whole and the same on any number of threads") {
  const Folder folder;
  const std::string printed = folder.advise({"--threads", "1"}).out;
  const Run run = folder.advise({"--threads", "4", "-o", folder.path("out.jsonl")});
  CHECK(run.exit_code == 3);
  CHECK(run.out.empty());
  CHECK(support::read_file(folder.path("out.jsonl")) == printed);
  std::string parts;
  for (const std::string part : {"1/2", "2/2"}) parts += folder.advise({"--part", part}).out;
  CHECK(parts == printed);
}

TEST_CASE("wrong words beside stands are refused") {
  const Folder folder;
  for (const std::string part : {"0/2", "3/2", "2", "1/0", "a/b", "1/2/3", "-1/2"}) {
    CAPTURE(part);
    const Run run = folder.advise({"--part=" + part});
    CHECK(run.exit_code == 2);
    CHECK(run.out.empty());
    CHECK(run.err.find("--part") != std::string::npos);
  }
  CHECK(folder.advise({"--prove"}).exit_code == 2);
  CHECK(folder.advise({"--threads", "many"}).exit_code == 2);
  CHECK(folder.advise({"-o", folder.table()}).exit_code == 2);
  CHECK(folder.advise({"-o", folder.scenario()}).exit_code == 2);
  CHECK(run_staddle({"advise", folder.scenario(), "--part", "1/2"}).exit_code == 2);
  CHECK(run_staddle({"advise", "-", "--stands", "-"}).exit_code == 2);
}

TEST_CASE("a faulty header or scenario writes nothing") {
  const Folder folder("name,acre,model\nA,5,x\n");
  const Run run = folder.advise({"-o", folder.path("out.jsonl")});
  CHECK(run.exit_code == 3);
  CHECK(run.err.find("did you mean \"acres\"?") != std::string::npos);
  CHECK(folder.names() == std::vector<std::string>{"scenario.json", "stands.csv"});
}

TEST_CASE("an interruption leaves no file behind") {
  std::string rows = stands;
  for (int i = 0; i < 20000; ++i) rows += "Field,30,loblolly-planted-coastal,70,600,,,\n";
  const Folder folder(rows);
  const Run run = support::run_shell(
      "\"$STADDLE\" advise \"$1\" --stands \"$2\" -o \"$3\" & sleep 0.5; kill -TERM $!; wait $!",
      {folder.scenario(), folder.table(), folder.path("out.jsonl")});
  CHECK(run.exit_code == 1);
  CHECK(run.err.find("stopped before all stands were answered; nothing was written") !=
        std::string::npos);
  CHECK(folder.names() == std::vector<std::string>{"scenario.json", "stands.csv"});
}

}  // namespace
}  // namespace staddle
