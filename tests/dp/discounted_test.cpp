// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>

#include "dp/header_example.h"
#include "dp/solve.h"
#include "staddle/base/contract.h"
#include "support/near.h"
#include "support/seed.h"

namespace staddle::dp {
namespace {

using support::within;

constexpr double discount = 0.9;

// Stay for 1 a step, or leave for 12 once. Staying is worth 1 / (1 - 0.9) = 10.
DecisionProcess stay_or_leave() { return {2, {{0, 1, {{0, discount}}}, {0, 12, {{1, discount}}}}}; }

TEST_CASE("process that goes on for ever is worth its perpetuity") {
  DecisionProcess process = stay_or_leave();
  for (const Method method : {Method::policy_iteration, Method::successive_values}) {
    process.actions[1].reward = 12;
    const Solution leave = solve_discounted(process, {.method = method});
    REQUIRE(leave.status == Status::optimal);
    CHECK(leave.values[0] == within(12.0, 1e-7));
    CHECK(leave.policy == Policy{1, no_action});
    process.actions[1].reward = 8;
    const Solution stay = solve_discounted(process, {.method = method});
    CHECK(stay.values[0] == within(10.0, 1e-7));
    CHECK(stay.policy == Policy{0, no_action});
  }
}

TEST_CASE("discounted solution equals the enumeration of all policies by both methods") {
  const support::TaggedSeed seed("discounted processes");
  RandomStream random = seed.stream();
  for (int trial = 0; trial < 200; ++trial) {
    const DecisionProcess process = random_process(
        random, {.states = 1 + random.next_below(5), .most_actions = 4, .largest_beta = 0.99});
    const Solution twin = solve_by_enumeration(process);
    REQUIRE(twin.status == Status::optimal);
    for (const Method method : {Method::policy_iteration, Method::successive_values}) {
      const Solution solution = solve_discounted(process, {.method = method});
      REQUIRE(solution.status == Status::optimal);
      for (std::size_t s = 0; s < process.states; ++s) {
        CHECK(solution.values[s] == within(twin.values[s], solution.residual_bound + 1e-10));
      }
      CHECK(solution.policy == twin.policy);
    }
  }
}

TEST_CASE("methods agree within their bounds on a process of many states") {
  const support::TaggedSeed seed("many states");
  RandomStream random = seed.stream();
  const DecisionProcess process =
      random_process(random, {.states = 400, .most_actions = 5, .largest_beta = 0.995});
  const Solution exact = solve_discounted(process, {.method = Method::policy_iteration});
  const Solution iterated = solve_discounted(process);  // by size: successive values
  REQUIRE(exact.status == Status::optimal);
  REQUIRE(iterated.status == Status::optimal);
  CHECK(iterated.iterations > exact.iterations);
  const double bound = exact.residual_bound + iterated.residual_bound;
  for (std::size_t s = 0; s < process.states; ++s) {
    CHECK(std::fabs(exact.values[s] - iterated.values[s]) <= bound);
  }
}

TEST_CASE("discounted values do not fall when an action is added") {
  const support::TaggedSeed seed("added actions");
  RandomStream random = seed.stream();
  for (std::size_t trial = 0; trial < 50; ++trial) {
    DecisionProcess process = random_process(random, {.states = 8});
    for (std::size_t s = 0; s < 8; ++s) process.actions.push_back({s, -1, {{s, 0.5}}});
    const Solution fewer = solve_discounted(process);
    process.actions.push_back({trial % 8, 10.0 * random.next_uniform(), {{0, 0.9}}});
    const Solution more = solve_discounted(process);
    for (std::size_t s = 0; s < 8; ++s) CHECK(more.values[s] >= fewer.values[s] - 1e-8);
  }
}

TEST_CASE("limit of iterations is a status of its own with an honest bound") {
  DecisionProcess process = stay_or_leave();
  process.actions[1].reward = 8;
  const Solution exact = solve_discounted(process);
  const Solution cut = solve_discounted(
      process, {.method = Method::successive_values, .bound = 1e-12, .max_iterations = 1});
  CHECK(cut.status == Status::limit_reached);
  REQUIRE(cut.values.size() == 2);
  CHECK(std::fabs(cut.values[0] - exact.values[0]) <= cut.residual_bound + 1e-12);
}

TEST_CASE("bound finer than rounding is numerical trouble with honest values") {
  const DecisionProcess process = {
      2, {{0, 1e6 / 3.0, {{0, 0.3}, {1, 0.69}}}, {1, 1e6 / 7.0, {{0, 0.59}, {1, 0.4}}}}};
  const Solution solution =
      solve_discounted(process, {.method = Method::policy_iteration, .bound = 1e-25});
  CHECK(solution.status == Status::numerical_trouble);
  CHECK(solution.residual_bound > 0.0);
  CHECK(std::isfinite(solution.residual_bound));
  CHECK(solution.values.size() == 2);
}

TEST_CASE("weights that sum to one are refused and just below are not") {
  const auto with_weight = [](double weight) {
    return DecisionProcess{1, {{0, 1, {{0, weight}}}}};
  };
  CHECK_THROWS_AS(solve_discounted(with_weight(1.0)), ContractViolation);
  CHECK(solve_discounted(with_weight(0.999)).values[0] == within(1000.0, 1e-6));
}

TEST_CASE("empty process and process of ends alone are worth nothing") {
  CHECK(solve_discounted({}).status == Status::optimal);
  for (const Method method : {Method::policy_iteration, Method::successive_values}) {
    const Solution ends = solve_discounted({3, {}}, {.method = method});
    CHECK(ends.status == Status::optimal);
    CHECK(ends.values == std::vector<double>{0, 0, 0});
    CHECK(ends.policy == Policy(3, no_action));
  }
  CHECK(solve_acyclic({3, {}}).values == std::vector<double>{0, 0, 0});
  CHECK(solve_by_enumeration({3, {}}).values == std::vector<double>{0, 0, 0});
}

TEST_CASE("discounted options that break their promise are refused") {
  const DecisionProcess process = stay_or_leave();
  CHECK_THROWS_AS(solve_discounted(process, {.bound = 0.0}), ContractViolation);
  CHECK_THROWS_AS(solve_discounted(process, {.bound = std::nan("")}), ContractViolation);
  CHECK_THROWS_AS(solve_discounted(process, {.max_iterations = 0}), ContractViolation);
}

TEST_CASE("enumeration refuses too many policies") {
  DecisionProcess process{20, {}};
  for (std::size_t s = 0; s < 20; ++s) {
    process.actions.push_back({s, 1, {}});
    process.actions.push_back({s, 2, {}});
  }
  CHECK_THROWS_AS(solve_by_enumeration(process), ContractViolation);  // 2^20 > 1,000,000
}

TEST_CASE("enumeration meets a policy without a value") {
  CHECK(solve_by_enumeration({1, {{0, 1, {{0, 1.0}}}}}).status == Status::numerical_trouble);
}

}  // namespace
}  // namespace staddle::dp
