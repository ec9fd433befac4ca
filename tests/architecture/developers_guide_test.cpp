// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <regex>
#include <set>
#include <sstream>

#include "architecture/include_rules.h"
#include "support/files.h"

namespace staddle {
namespace {

using support::in_source_tree;
using support::read_file;

std::string guide() { return read_file(in_source_tree("DEVELOPERS.md")); }

// What the rows of a section's table name in their first column.
std::set<std::string> names_in_table(const std::string& section) {
  const std::string text = guide();
  const std::size_t begin = text.find("\n## " + section + "\n");
  REQUIRE(begin != std::string::npos);
  std::istringstream lines(text.substr(begin, text.find("\n## ", begin + 1) - begin));
  std::set<std::string> names;
  const std::regex row("\\| `([a-z_]+)` \\|.*");
  std::smatch match;
  for (std::string line; std::getline(lines, line);) {
    if (std::regex_match(line, match, row)) names.insert(match[1]);
  }
  return names;
}

TEST_CASE("the developers guide says of every folder what is in it") {
  const std::set<std::string> named = names_in_table("The house");
  for (const std::string root : {"src", "include/staddle"}) {
    for (const auto& entry : std::filesystem::directory_iterator(in_source_tree(root))) {
      const std::string name = entry.path().filename().string();
      if (!entry.is_directory() || name == "cmake" || std::filesystem::is_empty(entry)) continue;
      CAPTURE(name);
      CHECK(named.count(name) == 1);
    }
  }
  std::set<std::string> known;
  for (const auto& level : architecture::parse_layers(read_file(STADDLE_LAYERS)).levels) {
    known.insert(level.begin(), level.end());
  }
  for (const std::string& name : named) {
    CAPTURE(name);
    CHECK(known.count(name) == 1);
  }
}

TEST_CASE("the developers guide shows every tolerance with its value") {
  const std::string header = read_file(in_source_tree("include/staddle/base/tolerance.h"));
  const std::string text = guide();
  const std::regex constant("inline constexpr double ([a-z_]+) = ([0-9.e-]+);");
  std::set<std::string> names;
  for (std::sregex_iterator at(header.begin(), header.end(), constant), end; at != end; ++at) {
    names.insert((*at)[1]);
    const std::string row = "| `" + (*at)[1].str() + "` | " + (*at)[2].str() + " |";
    CAPTURE(row);
    CHECK(text.find(row) != std::string::npos);
  }
  CHECK(names.size() > 5);
  CHECK(names_in_table("Tolerances") == names);
}

TEST_CASE("every path that the developers guide names is there") {
  const std::string text = guide();
  const std::regex path("`((?:src|include|tests|models|scenarios)/[A-Za-z0-9_./]+)`");
  std::size_t found = 0;
  for (std::sregex_iterator at(text.begin(), text.end(), path), end; at != end; ++at) {
    const std::string name = (*at)[1];
    CAPTURE(name);
    CHECK(std::filesystem::exists(in_source_tree(name)));
    ++found;
  }
  CHECK(found > 20);
}

}  // namespace
}  // namespace staddle
