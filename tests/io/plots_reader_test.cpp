// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/plots_reader.h"

#include <catch2/catch.hpp>

#include "support/near.h"

namespace staddle {
namespace {

const std::vector<std::string> products = {"sawtimber", "chip_n_saw", "pulpwood"};

std::vector<Plot> plots_of(const std::string& text) {
  Result<std::vector<Plot>> plots = read_plots(text, "plots.csv", products);
  if (!plots) {
    for (const Fault& fault : plots.error()) UNSCOPED_INFO(to_line(fault));
  }
  REQUIRE(plots);
  return std::move(plots).value();
}

// The one fault of a text.
Fault fault_of(const std::string& text) {
  const Result<std::vector<Plot>> plots = read_plots(text, "plots.csv", products);
  REQUIRE_FALSE(plots);
  for (const Fault& fault : plots.error()) UNSCOPED_INFO(to_line(fault));
  REQUIRE(plots.error().size() == 1);
  CHECK(plots.error()[0].file == "plots.csv");
  return plots.error()[0];
}

void check_fault(const std::string& text, FaultCode code, const std::string& place) {
  CAPTURE(text);
  const Fault fault = fault_of(text);
  CHECK(fault.code == code);
  CHECK(fault.place == place);
}

TEST_CASE("trees are gathered by plot in the order in which plots appear") {
  const auto plots = plots_of("plot,tree_dbh_in\nb,8\na,9.5\nb,7.25\n");
  REQUIRE(plots.size() == 2);
  CHECK(plots[0].name == "b");
  REQUIRE(plots[0].trees.size() == 2);
  CHECK(plots[0].trees[1].dbh == inches(7.25));
  CHECK(plots[1].trees.size() == 1);
}

TEST_CASE("every column is read in any order") {
  const auto plots = plots_of(
      "crown_width_ft,stratum,species,product,crown_class,live_crown_ratio,height_ft,tree_dbh_in,"
      "plot\n14,north,loblolly,pulpwood,C,0.41,56,8.2,1\n,north,,,,,,6,1\n");
  const TallyTree& tree = plots.at(0).trees.at(0);
  CHECK(plots[0].stratum == "north");
  CHECK(tree.crown_width == feet_across(14));
  CHECK(tree.species == "loblolly");
  CHECK(tree.product == "pulpwood");
  CHECK(tree.crown_class == CrownClass::codominant);
  CHECK(tree.live_crown_ratio == 0.41);
  CHECK(tree.height == feet(56));
  const TallyTree& other = plots[0].trees.at(1);
  CHECK_FALSE((other.height || other.live_crown_ratio || other.crown_class || other.crown_width));
}

TEST_CASE("a plot without trees is a row with a blank diameter") {
  const auto plots = plots_of("plot,tree_dbh_in,height_ft\n1,8,55\n2,,\n3,9,60\n");
  REQUIRE(plots.size() == 3);
  CHECK(plots[1].trees.empty());
}

TEST_CASE("crown classes are words or first letters in either case") {
  const auto plots =
      plots_of("plot,tree_dbh_in,crown_class\n1,8,D\n1,8,c\n1,8,Intermediate\n1,8,suppressed\n");
  CHECK(plots[0].trees[0].crown_class == CrownClass::dominant);
  CHECK(plots[0].trees[1].crown_class == CrownClass::codominant);
  CHECK(plots[0].trees[2].crown_class == CrownClass::intermediate);
  CHECK(plots[0].trees[3].crown_class == CrownClass::suppressed);
}

TEST_CASE("spreadsheets with a byte order mark and line ends of two bytes are read") {
  CHECK(plots_of("\xEF\xBB\xBFplot,tree_dbh_in\r\n1,8\r\n").size() == 1);
  CHECK(plots_of("plot;tree_dbh_in\n1;8.5\n")[0].trees[0].dbh == inches(8.5));
}

TEST_CASE("a faulty header is named by line and column") {
  check_fault("plot,tree_dbh_in,dbh\n1,8,8\n", FaultCode::unknown_key, "line 1, column dbh");
  check_fault("plot\n1\n", FaultCode::missing_key, "line 1, column tree_dbh_in");
  check_fault("tree_dbh_in\n8\n", FaultCode::missing_key, "line 1, column plot");
  check_fault("plot,plot,tree_dbh_in\n1,1,8\n", FaultCode::repeated_key, "line 1, column plot");
}

TEST_CASE("a misspelt column is met with the nearest one") {
  const Result<std::vector<Plot>> plots =
      read_plots("plot,tree_dbh_in,hieght_ft\n1,8,55\n", "plots.csv");
  REQUIRE_FALSE(plots);
  CHECK(plots.error()[0].hint == "did you mean \"height_ft\"?");
}

TEST_CASE("a faulty cell is named by line and column") {
  check_fault("plot,tree_dbh_in\n1,8\n1,eight\n", FaultCode::wrong_type,
              "line 3, column tree_dbh_in");
  check_fault("plot,tree_dbh_in\n1,nan\n", FaultCode::wrong_type, "line 2, column tree_dbh_in");
  check_fault("plot,tree_dbh_in\n1,1e999\n", FaultCode::wrong_type, "line 2, column tree_dbh_in");
  check_fault("plot,tree_dbh_in\n1,0\n", FaultCode::out_of_range, "line 2, column tree_dbh_in");
  check_fault("plot,tree_dbh_in\n1,-8\n", FaultCode::out_of_range, "line 2, column tree_dbh_in");
  check_fault("plot,tree_dbh_in\n1,100.5\n", FaultCode::out_of_range, "line 2, column tree_dbh_in");
  check_fault("plot,tree_dbh_in,height_ft\n1,8,4.5\n", FaultCode::out_of_range,
              "line 2, column height_ft");
  check_fault("plot,tree_dbh_in,height_ft\n1,8,201\n", FaultCode::out_of_range,
              "line 2, column height_ft");
  check_fault("plot,tree_dbh_in,live_crown_ratio\n1,8,1\n", FaultCode::out_of_range,
              "line 2, column live_crown_ratio");
  check_fault("plot,tree_dbh_in,crown_width_ft\n1,8,0\n", FaultCode::out_of_range,
              "line 2, column crown_width_ft");
  check_fault("plot,tree_dbh_in,crown_class\n1,8,tall\n", FaultCode::unknown_name,
              "line 2, column crown_class");
  check_fault("plot,tree_dbh_in,product\n1,8,plywood\n", FaultCode::unknown_name,
              "line 2, column product");
  check_fault("plot,tree_dbh_in\n,8\n", FaultCode::missing_key, "line 2, column plot");
}

TEST_CASE("values at the edge of what is allowed pass") {
  CHECK(plots_of("plot,tree_dbh_in,height_ft,live_crown_ratio,crown_width_ft\n"
                 "1,100,200,0.999,100\n1,0.1,4.6,0.001,0.5\n")[0]
            .trees.size() == 2);
}

TEST_CASE("a crown ratio in percent is met with how to write it") {
  CHECK(fault_of("plot,tree_dbh_in,live_crown_ratio\n1,8,38\n").hint ==
        "a share of the height: 0.35, not 35");
}

TEST_CASE("a decimal comma is recognised") {
  CHECK(fault_of("plot;tree_dbh_in\n1;8,5\n").text.find("decimal comma") != std::string::npos);
  check_fault("plot,tree_dbh_in\n1,8,5\n", FaultCode::malformed, "line 2");
}

TEST_CASE("rows that contradict each other are refused where the second stands") {
  check_fault("plot,tree_dbh_in\n1,8\n1,\n", FaultCode::contradiction,
              "line 3, column tree_dbh_in");
  check_fault("plot,tree_dbh_in\n1,\n1,8\n", FaultCode::contradiction,
              "line 3, column tree_dbh_in");
  check_fault("plot,tree_dbh_in\n1,\n1,\n", FaultCode::contradiction, "line 3, column tree_dbh_in");
  check_fault("plot,tree_dbh_in,stratum\n1,8,a\n1,9,b\n", FaultCode::contradiction,
              "line 3, column stratum");
  check_fault("plot,tree_dbh_in,stratum\n1,8,a\n2,9,\n", FaultCode::missing_key,
              "line 3, column stratum");
  check_fault("plot,tree_dbh_in,height_ft\n1,,55\n", FaultCode::missing_key,
              "line 2, column tree_dbh_in");
}

TEST_CASE("a text that is no table of plots is refused") {
  check_fault("", FaultCode::malformed, "");
  check_fault("plot,tree_dbh_in\n", FaultCode::malformed, "");
  check_fault("plot,tree_dbh_in\n1\n", FaultCode::malformed, "line 2");
  check_fault("plot,tree_dbh_in\n1,8\n2,\"9\n", FaultCode::malformed, "line 3");
  check_fault("plot,tree_dbh_in\n1,\"8\"x\n", FaultCode::malformed, "line 2");
  check_fault(std::string("plot,tree_dbh_in\n1,8\0", 21), FaultCode::unreadable, "");
  check_fault("plot,tree_dbh_in\n\xFF,8\n", FaultCode::unreadable, "");
  check_fault("plot,tree_dbh_in\na\tb,8\n", FaultCode::out_of_range, "line 2, column plot");
}

TEST_CASE("all faults of a file come back together") {
  const Result<std::vector<Plot>> plots =
      read_plots("plot,tree_dbh_in,height_ft\n1,x,50\n2,8,900\n,7,40\n", "plots.csv");
  REQUIRE_FALSE(plots);
  CHECK(plots.error().size() == 3);
}

}  // namespace
}  // namespace staddle
