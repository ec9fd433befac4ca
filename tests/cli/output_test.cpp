// SPDX-License-Identifier: GPL-3.0-or-later
#include <sys/stat.h>

#include <catch2/catch.hpp>
#include <filesystem>

#include "cli/run_here.h"
#include "support/files.h"

namespace staddle {
namespace {

using support::Run;
using support::run_shell;
using support::run_staddle;

const char* const model = "loblolly-planted-coastal";

TEST_CASE("a file gets what standard output would have got") {
  const support::TemporaryDirectory folder;
  const Run run = run_staddle({"models", model, "-o", folder.path("a.txt")});
  CHECK(run.exit_code == 0);
  CHECK(run.out.empty());
  const std::string printed = run_staddle({"models", model}).out;
  CHECK(support::read_file(folder.path("a.txt")) == printed);
  CHECK(run_staddle({"models", model, "-o", "-"}).out == printed);
  CHECK(support::names_in(folder.path()) == std::vector<std::string>{"a.txt"});
}

TEST_CASE("a target stays as it was when the run fails") {
  const support::TemporaryDirectory folder;
  const std::string target = folder.write("a.txt", "old\n");
  const std::string wrong = folder.write("wrong.json", "{}");
  CHECK(run_staddle({"advise", wrong, "-o", target}).exit_code == 3);
  CHECK(run_staddle({"advise", wrong, "-o", folder.path("new.txt")}).exit_code == 3);
  CHECK(run_staddle({"models", "nothing", "-o", target}).exit_code == 2);
  CHECK(support::read_file(target) == "old\n");
  CHECK(support::names_in(folder.path()) == std::vector<std::string>{"a.txt", "wrong.json"});
}

TEST_CASE("a target that is replaced keeps its permissions and a link to it stays a link") {
  const support::TemporaryDirectory folder;
  const std::string target = folder.write("a.txt", "old\n");
  std::filesystem::create_symlink("a.txt", folder.path("link"));
  ::chmod(target.c_str(), 0640);
  CHECK(run_staddle({"models", "-o", folder.path("link")}).exit_code == 0);
  CHECK(std::filesystem::is_symlink(folder.path("link")));
  CHECK(support::read_file(target) == run_staddle({"models"}).out);
  struct stat status {};
  REQUIRE(::stat(target.c_str(), &status) == 0);
  CHECK((status.st_mode & 0777) == 0640);
}

TEST_CASE("a disk that is full is a fault of writing and leaves nothing half-written") {
  const support::TemporaryDirectory folder;
  const std::string target = folder.write("a.txt", "old\n");
  // A limit on the size of files fails the write as a full disk does.
  for (const std::string& path : {target, folder.path("new.txt")}) {
    const Run run =
        run_shell("ulimit -f 1; exec \"$STADDLE\" models \"$1\" -o \"$2\"", {model, path});
    CHECK(run.exit_code == 1);
    CHECK(run.err.find(path + ": cannot be written: ") != std::string::npos);
  }
  CHECK(support::read_file(target) == "old\n");
  CHECK(support::names_in(folder.path()) == std::vector<std::string>{"a.txt"});
}

TEST_CASE("a full device is a fault of writing") {
  const Run file = run_staddle({"models", "-o", "/dev/full"});
  CHECK(file.exit_code == 1);
  CHECK(file.err == "staddle: /dev/full: cannot be written: No space left on device\n");
  const std::string full = "staddle: standard output: cannot be written: No space left on device\n";
  for (const std::string words : {"models", "--help", "help models", "--version"}) {
    CAPTURE(words);
    const Run run = run_shell("exec \"$STADDLE\" " + words + " > /dev/full");
    CHECK(run.exit_code == 1);
    CHECK(run.err == full);
  }
}

TEST_CASE("a closed standard output is a fault of writing") {
  CHECK(run_shell("exec \"$STADDLE\" models >&-").exit_code == 1);
}

TEST_CASE("a target that cannot be made is a fault of writing") {
  const support::TemporaryDirectory folder;
  CHECK(run_staddle({"models", "-o", folder.path("no/such/folder")}).exit_code == 1);
  CHECK(run_staddle({"models", "-o", folder.path()}).exit_code == 1);
  CHECK(support::names_in(folder.path()).empty());
}

TEST_CASE("an output without a name is a wrong command line") {
  const Run run = run_staddle({"models", "-o", ""});
  CHECK(run.exit_code == 2);
  CHECK(run.err.find("option --output: the name of the file is empty") != std::string::npos);
}

TEST_CASE("what is no regular file is written to as it is") {
  const support::TemporaryDirectory folder;
  CHECK(run_staddle({"models", "-o", "/dev/null"}).exit_code == 0);
  CHECK(std::filesystem::is_character_file("/dev/null"));
  const Run pipe =
      run_shell("mkfifo \"$1\" && { \"$STADDLE\" models -o \"$1\" & } && cat \"$1\" && wait",
                {folder.path("pipe")});
  CHECK(pipe.exit_code == 0);
  CHECK(pipe.out == run_staddle({"models"}).out);
  CHECK(std::filesystem::is_fifo(folder.path("pipe")));
}

}  // namespace
}  // namespace staddle
