// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/yield_table_reader.h"

#include <catch2/catch.hpp>

#include "io/scenario_fixture.h"

namespace staddle {
namespace {

using Lines = std::vector<std::string>;

const std::string yield_header =
    "age_yr,dominant_height_ft,tpa,basal_area_ft2_ac,logs_tons_ac,pulp_tons_ac\n";
const std::string rows =
    "10,34,540,80,0,30\n15,48,500,120,2,65\n20,60,450,145,15,80\n25,70,400,160,40,80\n";

Lines faults_in(const std::string& text) {
  Lines lines;
  const auto result = read_yield_table(text, "t.csv");
  if (result) return lines;
  for (const Fault& fault : result.error()) {
    CHECK(fault.file == "t.csv");
    lines.push_back(scenario_tests::name_of(fault.code) + " at " + fault.place);
  }
  return lines;
}

// The four rows with the cells of one line replaced.
std::string with_line(int line, const std::string& cells) {
  std::string text;
  std::string rest = yield_header + rows;
  for (int i = 1; !rest.empty(); ++i) {
    const std::size_t end = rest.find('\n');
    text += (i == line ? cells : rest.substr(0, end)) + "\n";
    rest = rest.substr(end + 1);
  }
  return text;
}

void check_is_the_table(const std::string& text) {
  const auto result = read_yield_table(text, "t.csv");
  CHECK(faults_in(text) == Lines{});
  REQUIRE(result);
  CHECK(result->age_yr == std::vector<int>{10, 15, 20, 25});
  CHECK(result->dominant_height_ft == std::vector<double>{34, 48, 60, 70});
  CHECK(result->tpa == std::vector<double>{540, 500, 450, 400});
  CHECK(result->basal_area_ft2_ac == std::vector<double>{80, 120, 145, 160});
  CHECK(result->products == Lines{"logs", "pulp"});
  CHECK(result->tons_ac == std::vector<std::vector<double>>{{0, 2, 15, 40}, {30, 65, 80, 80}});
}

std::string replaced(std::string text, const std::string& what, const std::string& by) {
  for (std::size_t at = 0; (at = text.find(what, at)) != std::string::npos; at += by.size()) {
    text.replace(at, what.size(), by);
  }
  return text;
}

TEST_CASE("a yield table is read whatever program saved it") {
  const std::string plain = yield_header + rows;
  check_is_the_table(plain);
  check_is_the_table("\xEF\xBB\xBF" + plain);
  check_is_the_table(replaced(plain, "\n", "\r\n"));
  check_is_the_table(replaced(plain, ",", ";"));
  check_is_the_table(replaced(plain, ",", " , "));
  check_is_the_table(replaced(plain, "logs_tons_ac", "\"logs_tons_ac\""));
  check_is_the_table(replaced(plain, ",540,", ",\"540\","));
  check_is_the_table(plain.substr(0, plain.size() - 1));
  check_is_the_table("# a comment, with a comma\n" + plain + "\n\n# the end");
  check_is_the_table(replaced(plain, "34,", "3.4e1,"));
}

TEST_CASE("columns of the stand stand in any order and products keep theirs") {
  const auto result = read_yield_table(
      "pulp_tons_ac,tpa,age_yr,logs_tons_ac,basal_area_ft2_ac,dominant_height_ft\n"
      "30,540,10,0,80,34\n65,500,15,2,120,48\n80,450,20,15,145,60\n80,400,25,40,160,70\n",
      "t.csv");
  REQUIRE(result);
  CHECK(result->age_yr == std::vector<int>{10, 15, 20, 25});
  CHECK(result->products == Lines{"pulp", "logs"});
  CHECK(result->tons_ac[0] == std::vector<double>{30, 65, 80, 80});
  CHECK(result->dominant_height_ft == std::vector<double>{34, 48, 60, 70});
}

TEST_CASE(
    "quoted names may hold delimiters and quotation marks and line ends are refused in names") {
  const std::string quoted =
      replaced(yield_header, "logs_tons_ac", "\"big, \"\"red\"\" logs_tons_ac\"");
  const auto result = read_yield_table(quoted + rows, "t.csv");
  REQUIRE(result);
  CHECK(result->products.at(0) == "big, \"red\" logs");
  const std::string broken = replaced(yield_header, "logs_tons_ac", "\"two\nlines_tons_ac\"");
  const auto refused = read_yield_table(broken + rows, "t.csv");
  REQUIRE_FALSE(refused);
  CHECK(refused.error().front().code == FaultCode::out_of_range);
}

TEST_CASE("lines are counted as an editor counts them") {
  CHECK(faults_in("# one\n\n" + with_line(3, "15,48,x,120,2,65")) ==
        Lines{"wrong type at line 5, column tpa"});
  CHECK(
      faults_in(replaced(with_line(4, "20,60,x,145,15,80"), "15,48,", "15,\"48\n\",")) ==
      Lines{"wrong type at line 3, column dominant_height_ft", "wrong type at line 5, column tpa"});
}

TEST_CASE("a header says which columns are missing or unknown or repeated") {
  CHECK(faults_in("age_yr,dominant_height_ft,basal_area,logs_tons_ac\n1,2,3,4\n") ==
        Lines{"unknown key at line 1, column basal_area", "missing key at line 1, column tpa",
              "missing key at line 1, column basal_area_ft2_ac"});
  CHECK(faults_in(replaced(yield_header, "pulp", "logs") + rows) ==
        Lines{"repeated key at line 1, column logs_tons_ac", "out of range at line 1"});
  CHECK(faults_in("age_yr,dominant_height_ft,tpa,basal_area_ft2_ac\n10,34,540,80\n") ==
        Lines{"out of range at line 1"});
  std::string thirteen = "age_yr,dominant_height_ft,tpa,basal_area_ft2_ac";
  for (int i = 0; i < 13; ++i) thirteen += ",p" + std::to_string(i) + "_tons_ac";
  CHECK(faults_in(thirteen + "\n") == Lines{"out of range at line 1"});
  const auto near = read_yield_table(replaced(yield_header, "tpa", "tap") + rows, "t.csv");
  CHECK(near.error().front().hint == "did you mean \"tpa\"?");
}

TEST_CASE("every cell is held to its range") {
  CHECK(faults_in(with_line(2, "0,34,540,80,0,30")) ==
        Lines{"out of range at line 2, column age_yr"});
  CHECK(faults_in(with_line(5, "151,70,400,160,40,80")) ==
        Lines{"out of range at line 5, column age_yr"});
  CHECK(faults_in(with_line(5, "150,70,400,160,40,80")) == Lines{});
  CHECK(faults_in(with_line(2, "9.5,34,540,80,0,30")) ==
        Lines{"wrong type at line 2, column age_yr"});
  CHECK(faults_in(with_line(2, "10,0,0,0,0,0")) ==
        Lines{"out of range at line 2, column dominant_height_ft",
              "out of range at line 2, column tpa"});
  CHECK(faults_in(with_line(2, "10,34,540,-1,-0.001,30")) ==
        Lines{"out of range at line 2, column basal_area_ft2_ac",
              "out of range at line 2, column logs_tons_ac"});
  CHECK(faults_in(with_line(2, "10,34,540,nan,inf,1e999")) ==
        Lines{"wrong type at line 2, column basal_area_ft2_ac",
              "wrong type at line 2, column logs_tons_ac",
              "wrong type at line 2, column pulp_tons_ac"});
  CHECK(faults_in(with_line(2, "10,34,540,80,,30")) ==
        Lines{"missing key at line 2, column logs_tons_ac"});
  CHECK(faults_in(with_line(2, "10,34,540,80,0x1A,30 t")) ==
        Lines{"wrong type at line 2, column logs_tons_ac",
              "wrong type at line 2, column pulp_tons_ac"});
}

TEST_CASE("ages rise from row to row") {
  CHECK(faults_in(with_line(4, "15,60,450,145,15,80")) ==
        Lines{"contradiction at line 4, column age_yr"});
  CHECK(faults_in(with_line(3, "30,60,450,145,15,80")) ==
        Lines{"contradiction at line 4, column age_yr", "contradiction at line 5, column age_yr"});
}

TEST_CASE("three rows are too few and four are enough") {
  CHECK(faults_in(yield_header + rows) == Lines{});
  CHECK(faults_in(yield_header + rows.substr(0, rows.rfind("25,"))) == Lines{"out of range at "});
  CHECK(faults_in(yield_header) == Lines{"out of range at "});
}

TEST_CASE("decimal commas are refused with a word on points") {
  const std::string semicolons = replaced(yield_header + rows, ",", ";");
  const auto refused = read_yield_table(replaced(semicolons, "34;", "34,5;"), "t.csv");
  REQUIRE_FALSE(refused);
  CHECK(refused.error().front().text.find("decimal comma") != std::string::npos);
  CHECK(refused.error().front().place == "line 2, column dominant_height_ft");
  const auto split = read_yield_table(with_line(2, "10,34,5,540,80,0,30"), "t.csv");
  REQUIRE_FALSE(split);
  CHECK(split.error().front().place == "line 2");
  CHECK(split.error().front().hint.find("point") != std::string::npos);
  CHECK(faults_in(with_line(2, "10,\"34,5\",540,80,0,30")) ==
        Lines{"wrong type at line 2, column dominant_height_ft"});
}

TEST_CASE("what is no table is said to be none") {
  CHECK(faults_in("") == Lines{"malformed at "});
  CHECK(faults_in("# only a comment\n") == Lines{"malformed at "});
  CHECK(faults_in(std::string("PK\x03\x04\0\0", 6)) == Lines{"unreadable at "});
  CHECK(faults_in("caf\xE9") == Lines{"unreadable at "});
  CHECK(faults_in(with_line(3, "15,\"48,500,120,2,65")) == Lines{"malformed at line 3"});
  CHECK(faults_in(with_line(3, "15,\"48\"x,500,120,2,65")) == Lines{"malformed at line 3"});
}

TEST_CASE("faults of a table stand among those of the scenario where it is named") {
  scenario_tests::Json scenario = scenario_tests::on_yield_table();
  scenario["acres"] = 0;
  scenario["economics"]["real_discount_rate"] = 0;
  const auto result = read_scenario(scenario.dump(), "s.json", [](const std::string&) {
    return Result<std::string>(yield_header + "10,34,540,80,0,x\n");
  });
  REQUIRE_FALSE(result);
  Lines lines;
  for (const Fault& fault : result.error()) lines.push_back(fault.file + " " + fault.place);
  CHECK(lines == Lines{"s.json /acres", "table.csv line 2, column pulp_tons_ac", "table.csv ",
                       "s.json /economics/real_discount_rate"});
}

}  // namespace
}  // namespace staddle
