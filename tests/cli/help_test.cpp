// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <regex>
#include <sstream>

#include "cli/run_here.h"
#include "support/files.h"
#include "support/text.h"

namespace staddle {
namespace {

using support::lines_of;
using support::Run;
using support::run_staddle;

// The commands that the overview lists.
std::vector<std::string> commands() {
  std::vector<std::string> names;
  bool listed = false;
  for (const std::string& line : lines_of(run_staddle({"--help"}).out)) {
    if (line == "Commands") {
      listed = true;
    } else if (listed && line.empty()) {
      break;
    } else if (listed && !line.starts_with("  help")) {
      names.push_back(line.substr(2, line.find(' ', 2) - 2));
    }
  }
  return names;
}

// The example of a command's help: what is typed, and how the output begins.
struct Example {
  std::string command;
  std::vector<std::string> output;
};

Example example_in(const std::string& help) {
  Example example;
  bool begun = false;
  for (const std::string& line : lines_of(help)) {
    if (line.starts_with("  $ ")) {
      example.command = line.substr(4);
      begun = true;
    } else if (line == "  ..." || line.starts_with("Exit status")) {
      if (begun) break;
    } else if (begun) {
      example.output.push_back(line.empty() ? line : line.substr(2));
    }
  }
  return example;
}

TEST_CASE("the overview names the four commands of one stand") {
  const std::vector<std::string> names = commands();
  for (const std::string name : {"advise", "grow", "check", "models"}) {
    CHECK(std::find(names.begin(), names.end(), name) != names.end());
  }
}

TEST_CASE("every command has help with what it answers and an example and its options") {
  REQUIRE(commands().size() >= 4);
  for (const std::string& name : commands()) {
    CAPTURE(name);
    const Run help = run_staddle({name, "--help"});
    CHECK(help.exit_code == 0);
    CHECK(help.err.empty());
    for (const std::string& part :
         {"usage: staddle " + name, std::string("What it answers"), std::string("Options"),
          std::string("--help"), std::string("--format"), std::string("-o, --output FILE"),
          std::string("Example"), "$ staddle " + name, std::string("Exit status")}) {
      CAPTURE(part);
      CHECK(help.out.find(part) != std::string::npos);
    }
    CHECK(run_staddle({"help", name}).out == help.out);
    CHECK(run_staddle({"--help", name}).out == help.out);
    CHECK(run_staddle({name, "-h"}).out == help.out);
  }
}

TEST_CASE("the example of every command prints what its help shows") {
  for (const std::string& name : commands()) {
    CAPTURE(name);
    const Example example = example_in(run_staddle({name, "--help"}).out);
    REQUIRE(example.command.starts_with("staddle "));
    REQUIRE(!example.output.empty());
    const Run run =
        support::run_shell("cd \"$1\" && exec \"$STADDLE\" " + example.command.substr(8),
                           {support::in_source_tree("")});
    CHECK(run.exit_code == 0);
    const std::vector<std::string> printed = lines_of(run.out);
    for (std::size_t i = 0; i < example.output.size(); ++i) {
      if (example.output[i].empty() && i + 1 == example.output.size()) break;
      REQUIRE(i < printed.size());
      CHECK(printed[i] == example.output[i]);
    }
  }
}

TEST_CASE("the examples of one stand's commands show enough to judge them by") {
  for (const std::string name : {"advise", "grow", "check", "models"}) {
    CAPTURE(name);
    CHECK(example_in(run_staddle({name, "--help"}).out).output.size() >= 10);
  }
}

TEST_CASE("no line of any help is wider than a hundred letters") {
  std::vector<std::string> texts{run_staddle({"--help"}).out};
  for (const std::string& name : commands()) {
    // What an example prints is as wide as it is.
    const std::string help = run_staddle({name, "--help"}).out;
    texts.push_back(help.substr(0, help.find("\nExample")));
  }
  for (const std::string& text : texts) {
    for (const std::string& line : lines_of(text)) {
      CAPTURE(line);
      CHECK(line.size() <= 100);
    }
  }
}

TEST_CASE("the version is one line and needs no command") {
  const Run run = run_staddle({"--version"});
  CHECK(run.exit_code == 0);
  CHECK(std::regex_match(run.out, std::regex("staddle [0-9]+\\.[0-9]+\\.[0-9]+\n")));
}

}  // namespace
}  // namespace staddle
