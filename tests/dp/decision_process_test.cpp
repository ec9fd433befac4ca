// SPDX-License-Identifier: GPL-3.0-or-later
#include "dp/decision_process.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "dp/header_example.h"
#include "dp/solve.h"
#include "staddle/base/contract.h"

namespace staddle::dp {
namespace {

using Catch::Matchers::Contains;

TEST_CASE("sound process breaks no promise") {
  CHECK(broken_promise(header_example()).empty());
  CHECK(broken_promise({}).empty());
  CHECK(broken_promise({3, {}}).empty());
}

TEST_CASE("each fault of a process is named with its action") {
  DecisionProcess process = header_example();
  SECTION("state out of range") {
    process.actions[2].state = 4;
    CHECK_THAT(broken_promise(process), Contains("action 2") && Contains("state 4 of 4"));
  }
  SECTION("next state out of range") {
    process.actions[3].transitions[0].next_state = 9;
    CHECK_THAT(broken_promise(process), Contains("action 3") && Contains("state 9 of 4"));
  }
  SECTION("reward that is no number") {
    process.actions[0].reward = std::nan("");
    CHECK_THAT(broken_promise(process), Contains("action 0") && Contains("reward"));
  }
  SECTION("infinite weight") {
    process.actions[1].transitions[0].weight = INFINITY;
    CHECK_THAT(broken_promise(process), Contains("action 1") && Contains("weight"));
  }
  SECTION("negative weight") {
    process.actions[5].transitions[0].weight = -1e-300;
    CHECK_THAT(broken_promise(process), Contains("action 5") && Contains("weight"));
  }
  CHECK_THROWS_AS(solve_acyclic(process), ContractViolation);
  CHECK_THROWS_AS(solve_finite(process, {}), ContractViolation);
  CHECK_THROWS_AS(solve_discounted(process), ContractViolation);
  CHECK_THROWS_AS(solve_by_enumeration(process), ContractViolation);
}

}  // namespace
}  // namespace staddle::dp
