// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "dp/header_example.h"
#include "dp/solve.h"
#include "staddle/base/contract.h"
#include "support/near.h"
#include "support/seed.h"

namespace staddle::dp {
namespace {

using support::relative;
using support::round_off;
using support::within;

// The recurrence as it is written, without a table.
double plain_value(const DecisionProcess& process, std::size_t state, int steps,
                   const std::vector<double>& at_end) {
  bool is_end = true;
  double best = -std::numeric_limits<double>::infinity();
  for (const Action& action : process.actions) {
    if (action.state != state) continue;
    is_end = false;
    if (steps == 0) break;
    double value = action.reward;
    for (const Transition& t : action.transitions) {
      value += t.weight * plain_value(process, t.next_state, steps - 1, at_end);
    }
    best = std::max(best, value);
  }
  return is_end || steps == 0 ? at_end[state] : best;
}

TEST_CASE("header example") {
  const Solution solution = solve_acyclic(header_example());
  REQUIRE(solution.status == Status::optimal);
  CHECK(solution.values == std::vector<double>{7, 8, 4, 0});
  CHECK(solution.policy == Policy{0, 3, 4, no_action});
  CHECK(solution.residual_bound == 0.0);
}

TEST_CASE("order of states and of actions does not change the value of an acyclic process") {
  const DecisionProcess original = header_example();
  DecisionProcess mirrored{4, {}};
  for (auto action = original.actions.rbegin(); action != original.actions.rend(); ++action) {
    Action copy = *action;
    copy.state = 3 - copy.state;
    for (Transition& t : copy.transitions) t.next_state = 3 - t.next_state;
    mirrored.actions.push_back(copy);
  }
  CHECK(solve_acyclic(mirrored).values == std::vector<double>{0, 4, 8, 7});
}

TEST_CASE("acyclic solution equals the enumeration of all policies") {
  const support::TaggedSeed seed("acyclic processes");
  RandomStream random = seed.stream();
  for (int trial = 0; trial < 300; ++trial) {
    const DecisionProcess process =
        random_process(random, {.states = 1 + random.next_below(6), .acyclic = true});
    const Solution fast = solve_acyclic(process);
    const Solution twin = solve_by_enumeration(process);
    REQUIRE(fast.status == Status::optimal);
    REQUIRE(twin.status == Status::optimal);
    for (std::size_t s = 0; s < process.states; ++s) {
      CHECK(fast.values[s] == within(twin.values[s], 1e-9));
    }
    CHECK(fast.policy == twin.policy);
  }
}

TEST_CASE("state that can be reached from itself is refused by status") {
  DecisionProcess process = header_example();
  process.actions.push_back({2, 0, {{0, 0.1}}});
  CHECK(solve_acyclic(process).status == Status::has_cycle);
  CHECK(solve_acyclic(process).values.empty());
  CHECK(solve_acyclic({1, {{0, 1, {{0, 0.5}}}}}).status == Status::has_cycle);
}

TEST_CASE("value too large for a number is numerical trouble") {
  const DecisionProcess process = {3, {{0, 0, {{1, 1e300}}}, {1, 1e300, {{2, 1}}}}};
  const Solution solution = solve_acyclic(process);
  CHECK(solution.status == Status::numerical_trouble);
  CHECK(solution.values.empty());
  const FiniteSolution finite = solve_finite(process, {.horizon = 2});
  CHECK(finite.status == Status::numerical_trouble);
  CHECK(finite.values.empty());
}

TEST_CASE("ties take the lowest action within the tolerance and not beyond") {
  const auto chosen = [](double better_by) {
    return solve_acyclic({1, {{0, 100.0, {}}, {0, 100.0 + better_by, {}}}}).policy[0];
  };
  CHECK(chosen(0.0) == 0);
  CHECK(chosen(0.9e-7) == 0);  // within 1e-9 x 100
  CHECK(chosen(1.1e-7) == 1);
}

TEST_CASE("finite horizon equals the plain recursion") {
  const support::TaggedSeed seed("finite horizons");
  RandomStream random = seed.stream();
  for (int trial = 0; trial < 200; ++trial) {
    const DecisionProcess process = random_process(random, {.states = 1 + random.next_below(5)});
    std::vector<double> at_end(process.states);
    for (double& value : at_end) value = 10.0 * random.next_uniform();
    const FiniteSolution solution = solve_finite(process, {.horizon = 4, .values_at_end = at_end});
    REQUIRE(solution.status == Status::optimal);
    REQUIRE(solution.values.size() == 5);
    for (int steps = 0; steps <= 4; ++steps) {
      for (std::size_t s = 0; s < process.states; ++s) {
        CHECK(solution.values[static_cast<std::size_t>(steps)][s] ==
              relative(plain_value(process, s, steps, at_end), round_off));
      }
    }
  }
}

TEST_CASE("finite policy followed forward earns its value") {
  const support::TaggedSeed seed("finite policies");
  RandomStream random = seed.stream();
  const DecisionProcess process = random_process(random, {.states = 6, .most_actions = 4});
  const FiniteSolution solution = solve_finite(process, {.horizon = 10});
  // The weight that each state carries as the policy is followed from state 0.
  std::vector<double> carried(process.states, 0.0);
  carried[0] = 1.0;
  double earned = 0.0;
  for (std::size_t steps = 10; steps > 0; --steps) {
    std::vector<double> next(process.states, 0.0);
    for (std::size_t s = 0; s < process.states; ++s) {
      const std::size_t choice = solution.policies[steps][s];
      if (choice == no_action) continue;
      earned += carried[s] * process.actions[choice].reward;
      for (const Transition& t : process.actions[choice].transitions) {
        next[t.next_state] += carried[s] * t.weight;
      }
    }
    carried = next;
  }
  CHECK(solution.values[10][0] == within(earned, 1e-9));
}

TEST_CASE("horizon of no steps is worth what stands at the end") {
  const FiniteSolution solution =
      solve_finite(header_example(), {.horizon = 0, .values_at_end = {1, 2, 3, 4}});
  REQUIRE(solution.values.size() == 1);
  CHECK(solution.values[0] == std::vector<double>{1, 2, 3, 4});
  CHECK(solution.policies[0] == Policy(4, no_action));
}

TEST_CASE("finite options that break their promise are refused") {
  CHECK_NOTHROW(solve_finite(header_example(), {}));
  CHECK_THROWS_AS(solve_finite(header_example(), {.horizon = -1}), ContractViolation);
  CHECK_THROWS_AS(solve_finite(header_example(), {.horizon = 1, .values_at_end = {1, 2, 3}}),
                  ContractViolation);
  CHECK_THROWS_AS(
      solve_finite(header_example(), {.horizon = 1, .values_at_end = {0, 0, 0, INFINITY}}),
      ContractViolation);
}

}  // namespace
}  // namespace staddle::dp
