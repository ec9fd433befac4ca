// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <thread>
#include <utility>

#include "lp/audit.h"
#include "lp/named_programs.h"
#include "lp/random_program.h"
#include "lp/solve.h"
#include "support/near.h"
#include "support/seed.h"

namespace staddle::lp {
namespace {

using support::relative;
using support::two_methods;
using support::within;

void check_like_a_fresh_solve(LinearProgramSolver& solver, const Options& options = {}) {
  const Solution warm = solver.solve(options);
  const Solution cold = solve(solver.program());
  CHECK(warm.status == cold.status);
  if (cold.status != Status::optimal) return;
  CHECK(warm.value == within(cold.value, 1e-7));
  CHECK(audit(solver.program(), warm).passed());
}

TEST_CASE("program grown column by column is worth what it is worth built at once") {
  const support::TaggedSeed seed("columns added");
  RandomStream random = seed.stream();
  for (int trial = 0; trial < 40; ++trial) {
    LinearProgramSolver solver(random_program(random, {}));
    check_like_a_fresh_solve(solver);
    for (int k = 0; k < 6; ++k) {
      Column column{.cost = 10.0 * random.next_uniform() - 5.0, .upper = 4.0};
      solver.add_column(column, {{random.next_below(3), 1.0}, {3 + random.next_below(3), -0.5}});
      check_like_a_fresh_solve(solver);
    }
  }
}

TEST_CASE("program changed in every way is worth what it is worth built at once") {
  const support::TaggedSeed seed("rows added and bounds changed");
  RandomStream random = seed.stream();
  for (int trial = 0; trial < 40; ++trial) {
    LinearProgramSolver solver(random_program(random, {}));
    solver.solve();
    for (int k = 0; k < 4; ++k) {
      solver.add_row({.upper = 12.0 * random.next_uniform()},
                     {{random.next_below(4), 1.0}, {4 + random.next_below(4), 2.0}});
      check_like_a_fresh_solve(solver, {.simplex = Simplex::dual});
      solver.set_row(random.next_below(6), {-5.0, 20.0 * random.next_uniform()});
      check_like_a_fresh_solve(solver);
      solver.set_column(random.next_below(8), {.cost = random.next_uniform(), .upper = 3.0});
      check_like_a_fresh_solve(solver);
    }
  }
}

TEST_CASE("second solve starts where the first ended") {
  const support::TaggedSeed seed("warm start");
  RandomStream random = seed.stream();
  LinearProgram program = random_program(random, {.rows = 60, .columns = 80});
  for (Column& column : program.columns) column = {.cost = column.cost, .upper = 5.0};
  for (Row& row : program.rows) row = {.upper = 20.0};
  LinearProgramSolver solver(program);
  const Solution first = solver.solve();
  REQUIRE(first.status == Status::optimal);
  CHECK(first.iterations > 10);
  CHECK(solver.solve().iterations == 0);
  solver.add_column({.cost = 0.0}, {{0, 1.0}});
  CHECK(solver.solve().iterations <= 1);
}

TEST_CASE("same history of solves gives the same bits") {
  const auto history = [] {
    const support::TaggedSeed seed("history");
    RandomStream random = seed.stream();
    LinearProgramSolver solver(random_program(random, {.rows = 20, .columns = 30}));
    solver.solve();
    solver.add_column({.cost = 1.0, .upper = 2.0}, {{0, 1.0}});
    return solver.solve();
  };
  const Solution once = history();
  const Solution again = history();
  CHECK(once.columns == again.columns);
  CHECK(once.duals == again.duals);
}

TEST_CASE("presolved answer that leaves a row unsatisfied is not believed") {
  // GLPK's presolver calls the first one optimal.
  for (const double asked : {2.0009, 2.00001}) {
    LinearProgram program =
        make_program(Direction::minimise, {{1, 0, 1}, {1, 0, 1}}, {{.lower = asked}}, {{1, 1}});
    const Solution solution = solve(program, {.presolve = true});
    CHECK(solution.status == Status::infeasible);
    CHECK(solution.iterations >= 0);
  }
}

TEST_CASE("limit of iterations is a status of its own and work goes on from there") {
  const support::TaggedSeed seed("iterations");
  RandomStream random = seed.stream();
  LinearProgram program = random_program(random, {.rows = 60, .columns = 80});
  for (Column& column : program.columns) column = {.cost = column.cost, .upper = 5.0};
  for (Row& row : program.rows) row = {.upper = 20.0};
  LinearProgramSolver solver(program);
  const Solution cut = solver.solve({.iterations = 3});
  CHECK(cut.status == Status::limit_reached);
  CHECK(cut.columns.empty());
  CHECK(cut.iterations == 3);
  CHECK(solver.solve().value == relative(solve(program).value, two_methods));
}

TEST_CASE("limit of time and a stop request are limits") {
  const LinearProgram program = header_example();
  CHECK(solve(program, {.seconds = 1e-9}).status == Status::limit_reached);
  std::stop_source source;
  source.request_stop();
  CHECK(solve(program, {.stop = source.get_token()}).status == Status::limit_reached);
}

TEST_CASE("numbers too far apart are trouble and not an answer") {
  const LinearProgram program =
      make_program(Direction::maximise, {{.cost = 1e300}}, {{.upper = 1e300}}, {{1e-300}});
  const Solution solution = solve(program);
  CHECK(solution.status != Status::optimal);
  CHECK_FALSE(solution.has_point());
}

TEST_CASE("solver may move between threads and threads may each have their own") {
  LinearProgramSolver solver(header_example());
  const double value = solver.solve().value;
  double elsewhere = 0.0;
  std::jthread([&] { elsewhere = solver.solve().value; }).join();
  CHECK(elsewhere == within(value, 1e-9));
  solver.add_row({.upper = 50}, {{0, 1.0}, {1, 1.0}});
  CHECK(solver.solve().status == Status::optimal);

  std::vector<double> values(4, 0.0);
  {
    std::vector<std::jthread> threads;
    for (double& own : values) {
      threads.emplace_back([&own] {
        for (int k = 0; k < 50; ++k) own = solve(header_example()).value;
      });
    }
  }
  CHECK(values == std::vector<double>(4, value));
}

TEST_CASE("moved solver goes on and an emptied one may be filled again") {
  LinearProgramSolver solver(header_example());
  const double value = solver.solve().value;
  LinearProgramSolver taken = std::move(solver);
  CHECK(taken.solve().value == value);
  solver = LinearProgramSolver(header_example());
  CHECK(solver.solve().value == value);
}

}  // namespace
}  // namespace staddle::lp
