// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "report/utf8.h"
#include "report/workbook.h"

namespace staddle {
namespace {

using sheets::Live;
using sheets::sheet_name;

TEST_CASE("a sheet name loses what no sheet name may hold") {
  CHECK(sheet_name("1 the plan", {}) == "1 the plan");
  CHECK(sheet_name("a[b]c:d*e?f/g\\h\ti", {}) == "a b c d e f g h i");
  CHECK(sheet_name("'quoted'", {}) == "quoted");
  CHECK(sheet_name("owner's own", {}) == "owner's own");
  CHECK(sheet_name("''' ", {}) == "Sheet");
  CHECK(sheet_name("", {}) == "Sheet");
  CHECK(sheet_name("history", {}) == "Sheet history");
}

TEST_CASE("a sheet name has 31 units of UTF-16 at most and ends with a whole letter") {
  const std::string thirty_one(31, 'x');
  CHECK(sheet_name(thirty_one, {}) == thirty_one);
  CHECK(sheet_name(thirty_one + "y", {}) == thirty_one);
  std::string trees;
  for (int i = 0; i < 20; ++i) trees += "\xF0\x9F\x8C\xB2";
  CHECK(sheet_name(trees, {}) == trees.substr(0, 4 * 15));
  CHECK(sheet_name(std::string(30, 'x') + " y", {}) == std::string(30, 'x'));
  CHECK(sheet_name(std::string(30, 'x') + "'y", {}) == std::string(30, 'x'));
}

TEST_CASE("a sheet name is never that of another sheet whatever the case") {
  CHECK(sheet_name("Plan", {"plan"}) == "Plan (2)");
  CHECK(sheet_name("Plan", {"plan", "PLAN (2)"}) == "Plan (3)");
  const std::string thirty_one(31, 'x');
  CHECK(sheet_name(thirty_one, {thirty_one}) == std::string(27, 'x') + " (2)");
}

TEST_CASE("formulas are bracketed where the order of operations needs it") {
  const Live a("A1", 6), b("B1", 3), c("C1", 2);
  CHECK((a - (b - c)).formula() == "A1-(B1-C1)");
  CHECK((a - (b - c)).value() == 5);
  CHECK((a / (b / c)).formula() == "A1/(B1/C1)");
  CHECK((a / (b / c)).value() == 4);
  CHECK((-a * b).formula() == "(-A1)*B1");
  CHECK((-(a + b)).formula() == "-(A1+B1)");
  CHECK((a * (b + c)).formula() == "A1*(B1+C1)");
  CHECK((a * b + c).formula() == "A1*B1+C1");
  CHECK((a + Live::constant(-2)).formula() == "A1+(-2)");
  CHECK(compounded(Live("A1", 1), -Live("B1", 3)).value() == 0.125);
}

TEST_CASE("cells are named by letters and rows counted from one") {
  CHECK(sheets::cell_name({0, 0}) == "A1");
  CHECK(sheets::cell_name({9, 25}) == "Z10");
  CHECK(sheets::cell_name({9, 26}) == "AA10");
  CHECK(sheets::fixed_cell_name({0, 702}) == "$AAA$1");
  CHECK(sheets::range_with_fixed_rows({0, 1}, {2, 3}) == "B$1:D$3");
}

TEST_CASE("a text is cut between letters") {
  CHECK(utf8::cut("ñandú", 5, "...") == "ñandú");
  CHECK(utf8::cut("ñandúes", 6, "...") == "ñan...");
  CHECK(utf8::cut("\xF0\x9F\x8C\xB2\xF0\x9F\x8C\xB2", 1, "") == "\xF0\x9F\x8C\xB2");
}

}  // namespace
}  // namespace staddle
