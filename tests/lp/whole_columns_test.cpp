// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>
#include <optional>

#include "lp/audit.h"
#include "lp/named_programs.h"
#include "lp/random_program.h"
#include "lp/solve.h"
#include "staddle/base/tolerance.h"
#include "support/near.h"
#include "support/seed.h"

namespace staddle::lp {
namespace {

using support::within;

// The best value over every whole point between the bounds.
std::optional<double> best_by_enumeration(const LinearProgram& program) {
  std::vector<double> x;
  for (const Column& column : program.columns) x.push_back(column.lower);
  std::optional<double> best;
  while (true) {
    std::vector<double> activity(program.rows.size(), 0.0);
    for (const Entry& entry : program.entries) activity[entry.row] += entry.value * x[entry.column];
    bool feasible = true;
    for (std::size_t i = 0; i < activity.size(); ++i) {
      feasible = feasible && activity[i] >= program.rows[i].lower - 1e-9 &&
                 activity[i] <= program.rows[i].upper + 1e-9;
    }
    double value = program.constant;
    for (std::size_t j = 0; j < x.size(); ++j) value += program.columns[j].cost * x[j];
    const double sign = program.direction == Direction::minimise ? 1.0 : -1.0;
    if (feasible && (!best || sign * value < sign * *best)) best = value;
    std::size_t j = 0;
    for (; j < x.size(); ++j) {
      if (++x[j] <= program.columns[j].upper) break;
      x[j] = program.columns[j].lower;
    }
    if (j == x.size()) return best;
  }
}

// max 8a + 11b + 6c + 4d; 5a + 7b + 4c + 3d <= 14; each 0 or 1: b, c, d for 21, though
// without whole numbers a, b and half of c are worth 22.
LinearProgram knapsack() {
  return make_program(Direction::maximise,
                      {{8, 0, 1, true}, {11, 0, 1, true}, {6, 0, 1, true}, {4, 0, 1, true}},
                      {{.upper = 14}}, {{5, 7, 4, 3}});
}

TEST_CASE("knapsack is filled with whole things") {
  const Solution solution = solve(knapsack());
  REQUIRE(solution.status == Status::optimal);
  CHECK(solution.columns == std::vector<double>{0, 1, 1, 1});
  CHECK(solution.value == 21.0);
  CHECK(solution.bound == 21.0);
  CHECK(solution.duals.empty());
  CHECK(solution.reduced_costs.empty());
}

TEST_CASE("whole programs equal the enumeration of their points") {
  const support::TaggedSeed seed("whole programs");
  RandomStream random = seed.stream();
  int with_point = 0;
  for (int trial = 0; trial < 150; ++trial) {
    const LinearProgram program = random_program(random, {.rows = 4, .columns = 6, .whole = true});
    const std::optional<double> best = best_by_enumeration(program);
    for (const bool presolve : {false, true}) {
      const Solution solution = solve(program, {.presolve = presolve});
      CHECK(solution.status == (best ? Status::optimal : Status::infeasible));
      if (!best) continue;
      ++with_point;
      CHECK(solution.value == within(*best, 1e-9));
      CHECK(audit(program, solution).passed());
    }
  }
  CHECK(with_point > 50);
}

TEST_CASE("columns that need not be whole are solved to the last digit beside whole ones") {
  // max 10n + x; 3n + x <= 10.0000003; n whole: n = 3, x = 1.0000003.
  const LinearProgram program =
      make_program(Direction::maximise, {{10, 0, infinity, true}, {.cost = 1}},
                   {{.upper = 10.0000003}}, {{3, 1}});
  const Solution solution = solve(program);
  REQUIRE(solution.status == Status::optimal);
  CHECK(solution.columns[0] == 3.0);
  CHECK(solution.columns[1] == within(1.0000003, 1e-12));
}

TEST_CASE("bounds of whole columns are rounded inwards within the slack of limits") {
  const auto largest = [](double upper) {
    return solve(make_program(Direction::maximise, {{1, 0, upper, true}}, {}, {})).value;
  };
  CHECK(largest(2.7) == 2.0);
  CHECK(largest(3.0 - 2.0 * tolerance::limit_slack) == 2.0);
  CHECK(largest(3.0) == 3.0);
}

TEST_CASE("whole column without a whole number between its bounds is infeasible") {
  const LinearProgram program = make_program(Direction::maximise, {{1, 0.2, 0.8, true}}, {}, {});
  CHECK(solve(program).status == Status::infeasible);
}

TEST_CASE("program infeasible only for whole numbers says so") {
  const LinearProgram program =
      make_program(Direction::minimise, {{1, 0, 1, true}, {1, 0, 1, true}}, {{1, 1}}, {{2, 2}});
  const Solution solution = solve(program);
  CHECK(solution.status == Status::infeasible);
  CHECK_THAT(solution.message, Catch::Matchers::Contains("whole"));
}

TEST_CASE("whole program without a limit is unbounded and without a point infeasible") {
  CHECK(solve(make_program(Direction::maximise, {{1, 0, infinity, true}}, {}, {})).status ==
        Status::unbounded);
  CHECK(solve(make_program(Direction::maximise, {{1, 0, infinity, true}}, {{.upper = -1}}, {{1}}))
            .status == Status::infeasible);
}

// Even weights and an odd capacity, each thing worth what it weighs: what is left over
// can never be 0, and a search by branches takes for ever to prove it (Chvatal 1980,
// Oper. Res. 28:1402, on such knapsacks). Half a unit of sand, which need not be whole,
// always fits beside.
LinearProgram hard_knapsack(double* capacity) {
  const support::TaggedSeed seed("hard knapsack");
  RandomStream random = seed.stream();
  LinearProgram program{Direction::maximise};
  std::vector<Term> terms;
  double sum = 0.0;
  for (std::size_t j = 0; j < 50; ++j) {
    const double weight = 2.0 * static_cast<double>(1'000'000 + random.next_below(1'000'000));
    program.add_column({weight / 3.0, 0.0, 1.0, true});
    terms.push_back({j, weight});
    sum += weight;
  }
  terms.push_back({program.add_column({1.0 / 3.0, 0.0, 0.5}), 1.0});
  *capacity = 2.0 * std::floor(sum / 4.0) + 1.0;
  program.add_row({.upper = *capacity}, terms);
  return program;
}

TEST_CASE("gap asked is reached and the bound is honest") {
  double capacity = 0.0;
  const LinearProgram program = hard_knapsack(&capacity);
  const Solution solution = solve(program, {.relative_gap = 0.01});
  REQUIRE(solution.status == Status::optimal);
  CHECK(solution.bound > solution.value);
  CHECK(solution.bound - solution.value <= 0.01 * solution.value);
  CHECK(audit(program, solution).passed());
}

TEST_CASE("whole program stopped in time keeps its point and a proved bound") {
  double capacity = 0.0;
  const LinearProgram program = hard_knapsack(&capacity);
  const Solution solution = solve(program, {.seconds = 0.3});
  CHECK(solution.status == Status::limit_reached);
  REQUIRE(solution.has_point());
  CHECK(solution.columns.back() == 0.5);
  CHECK(solution.value > 0.9 * capacity / 3.0);
  CHECK(solution.value < capacity / 3.0);
  CHECK(solution.bound >= solution.value);
  CHECK(solution.bound <= capacity / 3.0 + 1e-3);
}

TEST_CASE("solver goes on after whole columns as before") {
  LinearProgramSolver solver(knapsack());
  CHECK(solver.solve().value == 21.0);
  for (std::size_t j = 0; j < 4; ++j) {
    Column column = solver.program().columns[j];
    column.whole = false;
    solver.set_column(j, column);
  }
  const Solution relaxed = solver.solve();
  CHECK(relaxed.value == within(22.0, 1e-9));
  CHECK(relaxed.duals.size() == 1);
}

}  // namespace
}  // namespace staddle::lp
