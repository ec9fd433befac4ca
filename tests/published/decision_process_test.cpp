// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <vector>

#include "dp/solve.h"
#include "support/near.h"

namespace staddle::dp {
namespace {

using support::within;

constexpr double fire = 0.1;

// The "forest" example of the MDP toolbox family (general libraries for Markov decision
// processes): three ages; waiting pays 0, 0, 4, cutting 0, 1, 2; a fire in one year of
// ten, or a cut, makes the stand young again.
DecisionProcess fire_or_cut(double discount) {
  const std::vector<double> wait = {0, 0, 4};
  const std::vector<double> cut = {0, 1, 2};
  DecisionProcess process{3, {}};
  for (std::size_t age = 0; age < 3; ++age) {
    const std::size_t older = age < 2 ? age + 1 : 2;
    process.actions.push_back(
        {age, wait[age], {{0, discount * fire}, {older, discount * (1 - fire)}}});
    process.actions.push_back({age, cut[age], {{0, discount}}});
  }
  return process;
}

TEST_CASE("published fire or cut process without an end") {
  for (const Method method : {Method::policy_iteration, Method::successive_values}) {
    const Solution solution =
        solve_discounted(fire_or_cut(0.9), {.method = method, .bound = 1e-12});
    REQUIRE(solution.status == Status::optimal);
    CHECK(solution.values[0] == within(26.244, 1e-9));
    CHECK(solution.values[1] == within(29.484, 1e-9));
    CHECK(solution.values[2] == within(33.484, 1e-9));
    CHECK(solution.policy == Policy{0, 2, 4});  // never cut
  }
}

TEST_CASE("published fire or cut process over three years") {
  const FiniteSolution solution = solve_finite(fire_or_cut(0.9), {.horizon = 3});
  CHECK(solution.values[3][0] == within(2.6973, 1e-9));
  CHECK(solution.values[3][1] == within(5.9373, 1e-9));
  CHECK(solution.values[3][2] == within(9.9373, 1e-9));
}

// Moser's sequence v(k+1) = (1 + v(k)^2)/2, v(0) = 0: the value of k offers, uniform on
// 0..1 and seen one at a time, of which one may be taken (L. Moser 1956; v(10) as in the
// published sequence). The offers are the middles of 50,000 equal cells: only the cell
// that v(k) falls into is off, by less than width^2 / 8.
TEST_CASE("published value of ten uniform offers of which one is taken") {
  constexpr std::size_t offers = 50'000;
  const std::size_t next_offer = offers;  // the state before an offer is seen
  DecisionProcess process{offers + 1, {}};
  Action see{next_offer, 0.0, {}};
  for (std::size_t i = 0; i < offers; ++i) {
    see.transitions.push_back({i, 1.0 / offers});
    process.actions.push_back({i, (static_cast<double>(i) + 0.5) / offers, {}});
    process.actions.push_back({i, 0.0, {{next_offer, 1.0}}});
  }
  process.actions.push_back(see);
  // Each offer takes two steps: to see it, and to take it or to wait.
  const FiniteSolution solution = solve_finite(process, {.horizon = 20});
  CHECK(solution.values[20][next_offer] == within(0.8610982122, 1e-9));
}

}  // namespace
}  // namespace staddle::dp
