// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <vector>

#include "dp/solve.h"
#include "lp/solve.h"
#include "support/near.h"
#include "support/seed.h"

namespace staddle {
namespace {

using support::as_printed;
using support::two_methods;

// Manual of the GNU Linear Programming Kit, first example of the chapter on its use:
// max 10x + 6y + 4z; x + y + z <= 100; 10x + 4y + 5z <= 600; 2x + 2y + 6z <= 300.
TEST_CASE("published linear program has its printed value and dual") {
  lp::LinearProgram program{lp::Direction::maximise};
  program.add_column({.cost = 10});
  program.add_column({.cost = 6});
  program.add_column({.cost = 4});
  program.add_row({.upper = 100}, {{0, 1}, {1, 1}, {2, 1}});
  program.add_row({.upper = 600}, {{0, 10}, {1, 4}, {2, 5}});
  program.add_row({.upper = 300}, {{0, 2}, {1, 2}, {2, 6}});
  for (const bool presolve : {false, true}) {
    const lp::Solution solution = lp::solve(program, {.presolve = presolve});
    REQUIRE(solution.status == lp::Status::optimal);
    CHECK(solution.value == as_printed(733.333, 3));
    CHECK(solution.duals[0] == as_printed(3.3333, 4));
  }
}

// d'Epenoux 1963 (Manage. Sci. 10:98): the values of a discounted decision process are
// the least v, by their sum, with v(s) >= reward + sum of weight x v(next) for all actions.
lp::LinearProgram as_linear_program(const dp::DecisionProcess& process) {
  lp::LinearProgram program{lp::Direction::minimise};
  for (std::size_t s = 0; s < process.states; ++s) {
    program.add_column({.cost = 1, .lower = -lp::infinity});
  }
  for (const dp::Action& action : process.actions) {
    std::vector<double> row(process.states, 0.0);
    row[action.state] += 1.0;
    for (const dp::Transition& t : action.transitions) row[t.next_state] -= t.weight;
    std::vector<lp::Term> terms;
    for (std::size_t s = 0; s < process.states; ++s) {
      if (row[s] != 0.0) terms.push_back({s, row[s]});
    }
    program.add_row({.lower = action.reward}, terms);
  }
  return program;
}

dp::DecisionProcess random_process(RandomStream& random, std::size_t states) {
  dp::DecisionProcess process{states, {}};
  for (std::size_t s = 0; s < states; ++s) {
    for (int k = 0; k < 4; ++k) {
      dp::Action action{s, 100.0 * random.next_uniform() - 30.0, {}};
      for (int t = 0; t < 3; ++t) action.transitions.push_back({random.next_below(states), 0.31});
      process.actions.push_back(action);
    }
  }
  return process;
}

TEST_CASE("published linear program of a decision process has the process's values") {
  const support::TaggedSeed seed("decision processes as linear programs");
  RandomStream random = seed.stream();
  const std::vector<std::size_t> sizes = {1, 2, 5, 30, 200};
  for (const std::size_t states : sizes) {
    const dp::DecisionProcess process = random_process(random, states);
    const dp::Solution by_dp = dp::solve_discounted(process);
    const lp::Solution by_lp =
        lp::solve(as_linear_program(process), {.simplex = lp::Simplex::dual});
    REQUIRE(by_dp.status == dp::Status::optimal);
    REQUIRE(by_lp.status == lp::Status::optimal);
    for (std::size_t s = 0; s < states; ++s) {
      CHECK(by_lp.columns[s] == support::relative(by_dp.values[s], two_methods));
    }
  }
}

}  // namespace
}  // namespace staddle
