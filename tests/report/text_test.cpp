// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/text.h"

#include <catch2/catch.hpp>
#include <sstream>

#include "report/wrap.h"
#include "staddle/base/contract.h"
#include "support/text.h"

namespace staddle {
namespace {

using support::lines_of;

TEST_CASE("words are wrapped at the width and never within") {
  CHECK(lines_of_words("one two three", 7) == std::vector<std::string>{"one two", "three"});
  CHECK(lines_of_words("one two three", 6) == std::vector<std::string>{"one", "two", "three"});
  CHECK(lines_of_words("unbreakable", 3) == std::vector<std::string>{"unbreakable"});
  CHECK(lines_of_words("", 10) == std::vector<std::string>{""});
  CHECK(wrapped("a b c", "- ", "  ", 5) == "- a b\n  c");
}

TEST_CASE("width counts letters and not bytes") {
  CHECK(width_of("acre") == 4);
  CHECK(width_of("\xC3\xA9t\xC3\xA9") == 3);
}

TEST_CASE("a table stands in columns with numbers to the right") {
  const Table table{"Cuts",
                    {{"what", "", true}, {"basal area", "sq ft"}},
                    {{{"thinning"}, {"91", 91.0}}, {{"harvest"}, {"1,120", 1120.0}}}};
  CHECK(to_text(table) ==
        "Cuts\n"
        "          basal\n"
        "what       area\n"
        "          sq ft\n"
        "---------------\n"
        "thinning     91\n"
        "harvest   1,120\n");
}

TEST_CASE("a table without units has no row of units") {
  const Table table{"", {{"a", "", true}, {"b"}}, {{{"x"}, {"1"}}}};
  CHECK(to_text(table) == "a  b\n----\nx  1\n");
}

TEST_CASE("columns of words give way where a table is too wide") {
  std::string words;
  for (int i = 0; i < 40; ++i) words += "leaning ";
  const Table table{"", {{"name", "", true}, {"number", "$/acre"}}, {{{words}, {"7", 7.0}}}};
  const std::vector<std::string> lines = lines_of(to_text(table));
  CHECK(lines.size() > 5);
  for (const std::string& line : lines) CHECK(width_of(line) <= text_width);
  CHECK(lines[2].size() == text_width);  // the rule
}

TEST_CASE("no line of a table ends in a blank") {
  const Table table{"", {{"name", "", true}, {"remark", "", true}}, {{{"oak"}, {""}}}};
  for (const std::string& line : lines_of(to_text(table))) CHECK_FALSE(line.ends_with(' '));
}

TEST_CASE("a row without a cell for each column breaks the promise") {
  const Table table{"", {{"a"}, {"b"}}, {{{"1"}}}};
  CHECK_THROWS_AS(to_text(table), ContractViolation);
}

TEST_CASE("a long title is wrapped like everything else") {
  Report report;
  for (int i = 0; i < 30; ++i) report.title += "Long Hollow ";
  for (const std::string& line : lines_of(to_text(report))) CHECK(width_of(line) <= text_width);
}

TEST_CASE("lines of a report are numbered one after another whatever their topics") {
  Report report;
  report.title = "Title";
  report.lines = {{1, "First."}, {8, "Second."}};
  report.sections = {{"Part", {"Words."}, {}, {"An item."}}};
  report.foot = "Foot.";
  CHECK(to_text(report) ==
        "Title\n=====\n\n 1. First.\n 2. Second.\n\n\nPart\n----\n\nWords.\n\n- An "
        "item.\n\n\nFoot.\n");
}

}  // namespace
}  // namespace staddle
