// SPDX-License-Identifier: GPL-3.0-or-later
#include "lp/linear_program.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "lp/named_programs.h"
#include "lp/solve.h"
#include "staddle/base/contract.h"

namespace staddle::lp {
namespace {

using Catch::Matchers::Contains;

TEST_CASE("sound programs break no promise") {
  for (const NamedProgram& named : named_programs()) {
    CAPTURE(named.name);
    CHECK(broken_promise(named.program).empty());
  }
}

TEST_CASE("each fault of a program is named with its place") {
  LinearProgram program = header_example();
  const double nothing = std::nan("");
  std::string place;
  std::string what;
  SECTION("cost") { program.columns[1].cost = infinity, place = "column 1", what = "cost"; }
  SECTION("lower bound of a column") {
    program.columns[2].lower = nothing, place = "column 2", what = "lower bound";
  }
  SECTION("lower bound at plus infinity") {
    program.columns[2].lower = infinity, place = "column 2", what = "lower bound";
  }
  SECTION("upper bound of a column") {
    program.columns[0].upper = -infinity, place = "column 0", what = "upper bound";
  }
  SECTION("bounds of a column that cross") {
    program.columns[0] = {1.0, 2.0, std::nextafter(2.0, 0.0)};
    place = "column 0", what = "above";
  }
  SECTION("bounds of a row that cross") {
    program.rows[1] = {601, 600}, place = "row 1", what = "above";
  }
  SECTION("upper bound of a row") {
    program.rows[1].upper = nothing, place = "row 1", what = "upper bound";
  }
  SECTION("entry that is no number") {
    program.entries[4].value = nothing, place = "row 1 and column 1", what = "finite";
  }
  SECTION("entry outside") {
    program.entries.push_back({3, 0, 1}), place = "row 3 and column 0", what = "outside";
  }
  SECTION("entry given twice") {
    program.entries.push_back({2, 1, 1}), place = "row 2 and column 1", what = "twice";
  }
  SECTION("constant") { program.constant = infinity, place = "constant", what = "finite"; }
  CHECK_THAT(broken_promise(program), Contains(place) && Contains(what));
  CHECK_THROWS_AS(solve(program), ContractViolation);
}

TEST_CASE("equal bounds are sound and one unit in the last place less is not") {
  LinearProgram program = header_example();
  program.columns[0] = {1.0, 2.0, 2.0};
  CHECK(broken_promise(program).empty());
  program.columns[0].upper = std::nextafter(2.0, 0.0);
  CHECK_FALSE(broken_promise(program).empty());
}

TEST_CASE("default options are sound and each bad one is named") {
  CHECK(broken_promise(Options{}).empty());
  CHECK_THAT(broken_promise(Options{.seconds = 0.0}), Contains("seconds"));
  CHECK_THAT(broken_promise(Options{.seconds = std::nan("")}), Contains("seconds"));
  CHECK_THAT(broken_promise(Options{.iterations = 0}), Contains("iterations"));
  CHECK_THAT(broken_promise(Options{.relative_gap = -1e-9}), Contains("relative_gap"));
  CHECK_THROWS_AS(solve(header_example(), {.iterations = -1}), ContractViolation);
}

TEST_CASE("solver refuses changes that are not sound") {
  LinearProgramSolver solver(header_example());
  CHECK_THROWS_AS(solver.add_column({.cost = infinity}, {}), ContractViolation);
  CHECK_THROWS_AS(solver.add_column({}, {{3, 1.0}}), ContractViolation);
  CHECK_THROWS_AS(solver.add_column({}, {{1, 1.0}, {1, 2.0}}), ContractViolation);
  CHECK_THROWS_AS(solver.add_row({}, {{0, std::nan("")}}), ContractViolation);
  CHECK_THROWS_AS(solver.add_row({2.0, 1.0}, {}), ContractViolation);
  CHECK_THROWS_AS(solver.set_column(3, {}), ContractViolation);
  CHECK_THROWS_AS(solver.set_row(3, {}), ContractViolation);
  CHECK_THROWS_AS(solver.set_row(0, {2.0, 1.0}), ContractViolation);
  CHECK(solver.program().columns.size() == 3);
  CHECK(solver.solve().status == Status::optimal);
}

}  // namespace
}  // namespace staddle::lp
