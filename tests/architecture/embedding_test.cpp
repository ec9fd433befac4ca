// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "architecture/embedded_fixture.h"
#include "support/files.h"

namespace staddle {
namespace {

std::vector<std::string> names(std::span<const EmbeddedFile> files) {
  std::vector<std::string> result;
  for (const EmbeddedFile& file : files) result.emplace_back(file.name);
  return result;
}

TEST_CASE("files with every byte from 0 to 255 or with none are embedded unchanged") {
  REQUIRE(names(embedded_fixture()) ==
          std::vector<std::string>{"deeper/every_byte.csv", "empty.csv", "quotes.json"});
  for (const EmbeddedFile& file : embedded_fixture()) {
    CAPTURE(std::string(file.name));
    const std::string path = "tests/architecture/embedded/" + std::string(file.name);
    CHECK(file.content == support::read_file(support::in_source_tree(path)));
  }
}

TEST_CASE("the program carries every data file of models unchanged and in order") {
  std::vector<std::string> on_disk = support::files_in_source_tree("models", ".json");
  const std::vector<std::string> tables = support::files_in_source_tree("models", ".csv");
  on_disk.insert(on_disk.end(), tables.begin(), tables.end());
  std::sort(on_disk.begin(), on_disk.end());
  REQUIRE(names(embedded_files()) == on_disk);
  for (const EmbeddedFile& file : embedded_files()) {
    CAPTURE(std::string(file.name));
    const std::string path = "models/" + std::string(file.name);
    CHECK(file.content == support::read_file(support::in_source_tree(path)));
  }
}

}  // namespace
}  // namespace staddle
