// SPDX-License-Identifier: GPL-3.0-or-later
// What scenarios/demo and tests/run do about missing packages, on machines made up of
// a few commands in a directory that is the whole PATH.
#include <catch2/catch.hpp>
#include <filesystem>
#include <string>
#include <vector>

#include "support/files.h"
#include "support/program.h"

namespace staddle {
namespace {

using support::Run;

class Machine {
 public:
  Machine() {
    for (const char* name : {"dirname", "cat", "bash", "env"}) {
      std::filesystem::create_symlink("/usr/bin/" + std::string(name), directory_.path(name));
    }
    command("cmake", "echo nothing may be built here; exit 9");
  }
  // A command that does what the lines of shell say.
  void command(const std::string& name, const std::string& lines) {
    directory_.write(name, "#!/bin/sh\n" + lines + "\n");
    std::filesystem::permissions(directory_.path(name), std::filesystem::perms::owner_all);
  }
  // Debian, with none of the packages.
  void has_apt() {
    command("dpkg-query", "exit 1");
    command("apt-get", "echo apt-get \"$@\" >> " + log() + "; [ \"$1\" = update ]");
  }
  void user_is(int number) { command("id", "echo " + std::to_string(number)); }
  void has_sudo() { command("sudo", "echo sudo \"$@\" >> " + log() + "; exec \"$@\""); }

  Run run(const std::string& script) const {
    return support::run_program("/usr/bin/env", {"-i", "PATH=" + directory_.path(), "/bin/bash",
                                                 support::in_source_tree(script)});
  }
  std::string commands_run() const { return support::read_file(log()); }

 private:
  std::string log() const { return directory_.path("log"); }
  support::TemporaryDirectory directory_;
};

bool contains(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

const std::vector<std::string> scripts{"scenarios/demo", "tests/run"};

TEST_CASE("without apt-get the scripts print the packages and stop") {
  for (const std::string& script : scripts) {
    CAPTURE(script);
    Machine machine;
    machine.user_is(0);
    const Run run = machine.run(script);
    CHECK(run.exit_code == 1);
    CHECK(contains(run.err, "libglpk-dev"));
    CHECK(contains(run.err, "catch2") == (script == "tests/run"));
    CHECK_FALSE(contains(run.out, "nothing may be built"));
  }
}

TEST_CASE("neither root nor sudo means one install line and a stop") {
  for (const std::string& script : scripts) {
    CAPTURE(script);
    Machine machine;
    machine.has_apt();
    machine.user_is(1000);
    const Run run = machine.run(script);
    CHECK(run.exit_code == 1);
    CHECK(contains(run.err, "apt-get install -y --no-install-recommends g++ cmake "));
    CHECK(contains(run.err, "coinor-clp") == (script == "tests/run"));
    CHECK_THROWS(machine.commands_run());
  }
}

TEST_CASE("root refreshes the package lists and then installs what is missing") {
  Machine machine;
  machine.has_apt();
  machine.user_is(0);
  const Run run = machine.run("scenarios/demo");
  CHECK(run.exit_code == 1);  // this apt-get cannot install
  const std::string commands = machine.commands_run();
  CHECK(commands.starts_with("apt-get update"));
  CHECK(contains(commands, "\napt-get install -y"));
  CHECK(contains(run.err, "could not be installed"));
  CHECK(contains(run.err, "apt-get install -y --no-install-recommends g++"));
}

TEST_CASE("a user with sudo installs through it") {
  Machine machine;
  machine.has_apt();
  machine.has_sudo();
  machine.user_is(1000);
  CHECK(machine.run("scenarios/demo").exit_code == 1);
  CHECK(machine.commands_run().starts_with("sudo apt-get update"));
  CHECK(contains(machine.commands_run(),
                 "\nsudo env DEBIAN_FRONTEND=noninteractive apt-get install"));
}

TEST_CASE("only what is missing is installed") {
  Machine machine;
  machine.has_apt();
  machine.command("dpkg-query", "[ \"$3\" = libhwy-dev ] || printf installed");
  machine.user_is(1000);
  const Run run = machine.run("scenarios/demo");
  CHECK(run.exit_code == 1);
  CHECK(contains(run.err, "--no-install-recommends libhwy-dev\n"));
}

TEST_CASE("the test run refuses an option that it does not know") {
  const Machine machine;
  const Run run =
      support::run_program("/bin/bash", {support::in_source_tree("tests/run"), "--onlin"});
  CHECK(run.exit_code == 2);
  CHECK(contains(run.err, "--offline"));
}

}  // namespace
}  // namespace staddle
