// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/base/error.h"

#include <catch2/catch.hpp>

namespace staddle {
namespace {

TEST_CASE("a fault reads as file then place then text then hint") {
  const Fault fault{.code = FaultCode::unknown_key,
                    .file = "stand.json",
                    .place = "/stand/agee",
                    .text = "unknown key",
                    .hint = "did you mean \"age\"?"};
  CHECK(to_line(fault) == "stand.json: /stand/agee: unknown key (did you mean \"age\"?)");
}

TEST_CASE("the line of a fault leaves out what is empty without stray punctuation") {
  CHECK(to_line({.text = "rate is missing"}) == "rate is missing");
  CHECK(to_line({.file = "a.json", .text = "cannot be opened"}) == "a.json: cannot be opened");
  CHECK(to_line({.place = "/prices", .text = "missing"}) == "/prices: missing");
  CHECK(to_line({.text = "no regime", .hint = "widen the ages"}) == "no regime (widen the ages)");
  CHECK(to_line({.file = "a.json", .place = "line 7"}) == "a.json: line 7");
  CHECK(to_line({}).empty());
}

TEST_CASE("the nearest name is the one with the fewest edits") {
  const std::vector<std::string> known{"site_index_ft", "trees_per_acre", "basal_area"};
  CHECK(nearest_name("basal_area", known) == "basal_area");
  CHECK(nearest_name("basel_area", known) == "basal_area");
  CHECK(nearest_name("basalarea", known) == "basal_area");
  CHECK(nearest_name("trees_per_acres", known) == "trees_per_acre");
  CHECK(nearest_name("siteindexft", known) == "site_index_ft");
}

TEST_CASE("a short name may be two edits away and not three") {
  CHECK(nearest_name("prixez", {"prices"}) == "prices");
  CHECK(nearest_name("brixez", {"prices"}).empty());
  CHECK(nearest_name("ages", {"age"}) == "age");
}

TEST_CASE("a long name may be a third of its length away and no more") {
  CHECK(nearest_name("abcdefghiXYZ", {"abcdefghi"}) == "abcdefghi");          // 3 edits of 12: 4
  CHECK(nearest_name("abcdefghVWXYZ", {"abcdefgh"}).empty());                 // 5 edits of 13: 4
  CHECK(nearest_name("abcdefghijkVWXYZ", {"abcdefghijk"}) == "abcdefghijk");  // 5 of 16: 5
}

TEST_CASE("names equally near give the first of the list") {
  CHECK(nearest_name("cat", {"cut", "cart", "oat"}) == "cut");
  CHECK(nearest_name("cat", {"oat", "cut"}) == "oat");
}

TEST_CASE("a name none of whose letters would stay suggests nothing") {
  CHECK(nearest_name("xy", {"id"}).empty());
  CHECK(nearest_name("", {"id"}).empty());
  CHECK(nearest_name("ie", {"id"}) == "id");
}

TEST_CASE("an endless name and an empty list suggest nothing") {
  CHECK(nearest_name(std::string(1'000'000, 'a'), {std::string(64, 'a')}).empty());
  CHECK(nearest_name(std::string(64, 'a'), {std::string(60, 'a')}) == std::string(60, 'a'));
  CHECK(nearest_name("age", {}).empty());
}

}  // namespace
}  // namespace staddle
