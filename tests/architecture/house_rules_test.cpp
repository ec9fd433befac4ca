// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

#include "support/files.h"

namespace staddle {
namespace {

std::vector<std::string> project_files(const std::vector<std::string>& endings) {
  std::vector<std::string> files;
  for (const std::string root : {"include", "src", "models", "tests", "scenarios", ".ci"}) {
    for (const std::string& ending : endings) {
      for (const std::string& name : support::files_in_source_tree(root, ending)) {
        files.push_back(root + "/" + name);
      }
    }
  }
  return files;
}

std::vector<std::string> lines_of(const std::string& path) {
  std::istringstream stream(support::read_file(support::in_source_tree(path)));
  std::vector<std::string> lines;
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

// Code points, since a line is as wide as its letters are many.
std::ptrdiff_t width(const std::string& line) {
  return std::count_if(line.begin(), line.end(),
                       [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; });
}

TEST_CASE("every file of ours names its licence at the top") {
  const std::string licence = "SPDX-License-Identifier: GPL-3.0-or-later";
  std::vector<std::string> files =
      project_files({".h", ".cpp", ".cmake", "CMakeLists.txt", ".sh", ".py", ".md"});
  for (const char* name : {"CMakeLists.txt", ".gitignore", ".clang-format", ".ci/run", "tests/run",
                           "scenarios/demo"}) {
    files.emplace_back(name);
  }
  for (const std::string& path : files) {
    CAPTURE(path);
    const std::vector<std::string> lines = lines_of(path);
    // A script's first line names its interpreter.
    const std::size_t first = !lines.empty() && lines[0].starts_with("#!") ? 1 : 0;
    REQUIRE(lines.size() > first);
    CHECK(lines[first].find(licence) != std::string::npos);
  }
}

// Types of one name in one namespace, in files that never meet in a compilation: no compiler
// sees it, and the linker takes the functions of either for both.
TEST_CASE("no two files define a type of one name in one namespace") {
  const std::regex opens_namespace(R"(^namespace ?([\w:]*) ?\{.*)");
  const std::regex defines_type(R"(^(?:struct|class|enum class) (\w+)(?: final)?(?: :.*)? \{.*)");
  std::map<std::string, std::string> homes;
  for (const std::string& path : project_files({".h", ".cpp"})) {
    // Each of these is a program of its own, with a sound twin.
    if (path.starts_with("tests/compile_fail/")) continue;
    std::vector<std::string> spaces;
    for (const std::string& line : lines_of(path)) {
      std::smatch match;
      if (std::regex_match(line, match, opens_namespace)) spaces.push_back(match[1].str() + "::");
      if (line.starts_with("}  // namespace") && !spaces.empty()) spaces.pop_back();
      const bool local = std::ranges::find(spaces, "::") != spaces.end();
      if (local || !std::regex_match(line, match, defines_type)) continue;
      std::string name;
      for (const std::string& space : spaces) name += space;
      name += match[1].str();
      CAPTURE(name, path, homes[name]);
      CHECK(homes[name].empty());
      homes[name] = path;
    }
  }
  CHECK(homes.size() > 300);
}

TEST_CASE("no source is longer than 400 lines or wider than 100 columns") {
  for (const std::string& path : project_files({".h", ".cpp"})) {
    CAPTURE(path);
    const std::vector<std::string> lines = lines_of(path);
    CHECK(lines.size() <= 400);
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (width(lines[i]) > 100) FAIL_CHECK(path << ":" << i + 1 << " is too wide");
    }
  }
}

TEST_CASE("no source opens a whole namespace or leaves a note of work to do") {
  // Put together here, so that this file does not find itself.
  const std::vector<std::string> banned{std::string("using ") + "namespace ",
                                        std::string("TO") + "DO", std::string("FIX") + "ME"};
  for (const std::string& path : project_files({".h", ".cpp", ".cmake", "CMakeLists.txt"})) {
    for (const std::string& line : lines_of(path)) {
      for (const std::string& word : banned) {
        if (line.find(word) != std::string::npos) FAIL_CHECK(path << ": " << line);
      }
    }
  }
}

TEST_CASE("no name of a test holds a letter at which the test runner would split it") {
  const std::regex test_case("TEST_CASE\\(\\s*\"([^\"]*)\"");
  std::size_t found = 0;
  for (const std::string& path : project_files({"_test.cpp"})) {
    const std::string content = support::read_file(support::in_source_tree(path));
    for (std::sregex_iterator at(content.begin(), content.end(), test_case), end; at != end; ++at) {
      const std::string name = (*at)[1];
      CAPTURE(path, name);
      CHECK(name.find_first_of(";,[]\\") == std::string::npos);
      ++found;
    }
  }
  CHECK(found > 40);
}

}  // namespace
}  // namespace staddle
