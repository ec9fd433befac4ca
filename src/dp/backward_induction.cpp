// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <utility>

#include "dp/lookahead.h"
#include "dp/solve.h"
#include "staddle/base/contract.h"

namespace staddle::dp {
namespace {

// The states such that every transition leads to an earlier one; shorter than the
// process where there is a cycle.
std::vector<std::size_t> from_the_ends(const DecisionProcess& process) {
  std::vector<std::vector<std::size_t>> sources(process.states);  // a state per transition
  std::vector<std::size_t> waiting_for(process.states, 0);
  for (const Action& action : process.actions) {
    for (const Transition& transition : action.transitions) {
      sources[transition.next_state].push_back(action.state);
      ++waiting_for[action.state];
    }
  }
  std::vector<std::size_t> order;
  for (std::size_t s = 0; s < process.states; ++s) {
    if (waiting_for[s] == 0) order.push_back(s);
  }
  for (std::size_t done = 0; done < order.size(); ++done) {
    for (const std::size_t source : sources[order[done]]) {
      if (--waiting_for[source] == 0) order.push_back(source);
    }
  }
  return order;
}

}  // namespace

Solution solve_acyclic(const DecisionProcess& process) {
  require_sound(process);
  Solution solution;
  const std::vector<std::size_t> order = from_the_ends(process);
  if (order.size() < process.states) {
    solution.status = Status::has_cycle;
    solution.message = "some state can be reached from itself";
    return solution;
  }
  const ActionsOfStates actions(process);
  std::vector<double> values(process.states, 0.0);
  Policy policy(process.states, no_action);
  for (const std::size_t s : order) {
    if (actions.of(s).empty()) continue;
    const Choice choice = best_choice(process, actions.of(s), values);
    values[s] = choice.value;
    policy[s] = choice.action;
  }
  if (!all_finite(values)) {
    solution.message = "a value is too large to be a number";
    return solution;
  }
  return {
      Status::optimal, std::move(values), std::move(policy), 0.0, 1, "solved from the ends back"};
}

FiniteSolution solve_finite(const DecisionProcess& process, const FiniteOptions& options) {
  require_sound(process);
  require(options.horizon >= 0, "solve_finite needs horizon >= 0");
  std::vector<double> at_end = options.values_at_end;
  if (at_end.empty()) at_end.assign(process.states, 0.0);
  require(at_end.size() == process.states, "solve_finite needs a value at the end per state");
  require(all_finite(at_end), "solve_finite needs finite values at the end");

  const ActionsOfStates actions(process);
  FiniteSolution solution;
  solution.values.push_back(std::move(at_end));
  solution.policies.emplace_back(process.states, no_action);
  for (int step = 0; step < options.horizon; ++step) {
    const std::vector<double>& later = solution.values.back();
    std::vector<double> values = later;
    Policy policy(process.states, no_action);
    for (std::size_t s = 0; s < process.states; ++s) {
      if (actions.of(s).empty()) continue;
      const Choice choice = best_choice(process, actions.of(s), later);
      values[s] = choice.value;
      policy[s] = choice.action;
    }
    if (!all_finite(values)) {
      return {Status::numerical_trouble, {}, {}, "a value is too large to be a number"};
    }
    solution.values.push_back(std::move(values));
    solution.policies.push_back(std::move(policy));
  }
  solution.status = Status::optimal;
  solution.message = "solved from the last step back";
  return solution;
}

}  // namespace staddle::dp
