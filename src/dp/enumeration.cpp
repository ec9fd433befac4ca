// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <utility>

#include "dp/lookahead.h"
#include "dp/solve.h"
#include "staddle/base/contract.h"
#include "staddle/base/tolerance.h"

namespace staddle::dp {
namespace {

constexpr double most_policies = 1e6;

// Turns the policy into the next in lexicographic order; false after the last.
bool advance(const ActionsOfStates& actions, Policy& policy) {
  for (std::size_t s = policy.size(); s-- > 0;) {
    const std::vector<std::size_t>& own = actions.of(s);
    if (own.empty()) continue;
    const auto next = std::upper_bound(own.begin(), own.end(), policy[s]);
    if (next != own.end()) {
      policy[s] = *next;
      return true;
    }
    policy[s] = own.front();
  }
  return false;
}

Policy first_policy(const DecisionProcess& process, const ActionsOfStates& actions) {
  Policy policy(process.states, no_action);
  double policies = 1.0;
  for (std::size_t s = 0; s < process.states; ++s) {
    if (actions.of(s).empty()) continue;
    policy[s] = actions.of(s).front();
    policies *= static_cast<double>(actions.of(s).size());
  }
  require(policies <= most_policies, "solve_by_enumeration takes 1,000,000 policies at most");
  return policy;
}

bool ties_everywhere(const std::vector<double>& best, const std::vector<double>& values) {
  return std::equal(best.begin(), best.end(), values.begin(), tolerance::values_tie);
}

}  // namespace

Solution solve_by_enumeration(const DecisionProcess& process) {
  require_sound(process);
  const ActionsOfStates actions(process);
  const Policy first = first_policy(process, actions);

  Solution solution;
  // One policy is best in every state at once, so the best by state is its value.
  Policy policy = first;
  do {
    const std::vector<double> values = value_of_policy(process, policy);
    if (values.size() != process.states || !all_finite(values)) {
      solution.message = "a policy has no finite value";
      return solution;
    }
    if (solution.values.empty()) solution.values = values;
    for (std::size_t s = 0; s < process.states; ++s) {
      solution.values[s] = std::max(solution.values[s], values[s]);
    }
    ++solution.iterations;
  } while (advance(actions, policy));

  policy = first;
  while (!ties_everywhere(solution.values, value_of_policy(process, policy))) {
    if (!advance(actions, policy)) {
      throw ContractViolation(
          "solve_by_enumeration needs a process without a cycle, or with "
          "weights that sum to less than 1");
    }
  }
  solution.policy = std::move(policy);
  solution.status = Status::optimal;
  solution.residual_bound = 0.0;
  solution.message = "every policy was valued";
  return solution;
}

}  // namespace staddle::dp
