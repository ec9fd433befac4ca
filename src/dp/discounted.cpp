// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "dp/lookahead.h"
#include "dp/solve.h"
#include "staddle/base/contract.h"

namespace staddle::dp {
namespace {

// One step of the recurrence from given values.
struct Step {
  std::vector<double> values;  // T v
  Policy policy;               // by the tie rule
  Policy greatest;             // reaches T v exactly
  double residual = 0.0;       // max |T v - v|
};

Step step_from(const DecisionProcess& process, const ActionsOfStates& actions,
               const std::vector<double>& values) {
  const Policy none(process.states, no_action);
  Step step{std::vector<double>(process.states, 0.0), none, none, 0.0};
  for (std::size_t s = 0; s < process.states; ++s) {
    if (!actions.of(s).empty()) {
      const Choice choice = best_choice(process, actions.of(s), values);
      step.values[s] = choice.value;
      step.policy[s] = choice.action;
      step.greatest[s] = choice.greatest;
    }
    step.residual = std::max(step.residual, std::fabs(step.values[s] - values[s]));
  }
  return step;
}

double largest_magnitude(const std::vector<double>& values) {
  double largest = 1.0;
  for (const double value : values) largest = std::max(largest, std::fabs(value));
  return largest;
}

// Values and what is known of them, measured afresh on the process itself.
Solution judged(const DecisionProcess& process, const ActionsOfStates& actions,
                std::vector<double> values, const DiscountedOptions& options, int iterations) {
  Solution solution;
  solution.iterations = iterations;
  if (values.size() != process.states || !all_finite(values)) {
    solution.message = "a value is too large to be a number";
    return solution;
  }
  Step step = step_from(process, actions, values);
  solution.residual_bound = step.residual / (1.0 - largest_weight_sum(process));
  solution.policy = std::move(step.policy);
  if (solution.residual_bound <= options.bound * largest_magnitude(values)) {
    solution.status = Status::optimal;
    solution.message = "no policy is better than the bound says";
  } else if (iterations >= options.max_iterations) {
    solution.status = Status::limit_reached;
    solution.message = "the limit of iterations was reached";
  } else {
    solution.message = "rounding keeps the bound above what was asked";
  }
  solution.values = std::move(values);
  return solution;
}

// The policy with every choice replaced that another action beats by more than rounding.
bool improve(const DecisionProcess& process, const ActionsOfStates& actions,
             const std::vector<double>& values, Policy& policy) {
  const double rounding = 64.0 * std::numeric_limits<double>::epsilon() * largest_magnitude(values);
  bool changed = false;
  for (std::size_t s = 0; s < process.states; ++s) {
    if (actions.of(s).empty()) continue;
    double best = action_value(process.actions[policy[s]], values) + rounding;
    for (const std::size_t i : actions.of(s)) {
      const double value = action_value(process.actions[i], values);
      if (value <= best) continue;
      best = value;
      policy[s] = i;
      changed = true;
    }
  }
  return changed;
}

Solution by_policies(const DecisionProcess& process, const ActionsOfStates& actions,
                     const DiscountedOptions& options) {
  Policy policy = step_from(process, actions, std::vector<double>(process.states, 0.0)).policy;
  std::vector<double> values;
  int iterations = 0;
  do {
    values = value_of_policy(process, policy);
    ++iterations;
  } while (iterations < options.max_iterations && !values.empty() && all_finite(values) &&
           improve(process, actions, values, policy));
  return judged(process, actions, std::move(values), options, iterations);
}

// Values v with T v >= v, from which the method converges (from others it may cycle).
std::vector<double> low_values(const DecisionProcess& process, const ActionsOfStates& actions) {
  double least = 0.0;  // of the best rewards
  for (std::size_t s = 0; s < process.states; ++s) {
    if (actions.of(s).empty()) continue;
    double best = process.actions[actions.of(s).front()].reward;
    for (const std::size_t i : actions.of(s)) best = std::max(best, process.actions[i].reward);
    least = std::min(least, best);
  }
  const double low = least / (1.0 - largest_weight_sum(process));
  std::vector<double> values(process.states, 0.0);
  for (std::size_t s = 0; s < process.states; ++s) {
    if (!actions.of(s).empty()) values[s] = low;
  }
  return values;
}

Solution by_values(const DecisionProcess& process, const ActionsOfStates& actions,
                   const DiscountedOptions& options) {
  // So many sweeps cost about as much as one step over four actions a state.
  constexpr int sweeps = 4;
  const double beta = largest_weight_sum(process);
  std::vector<double> values = low_values(process, actions);
  int iterations = 0;
  while (iterations < options.max_iterations && all_finite(values)) {
    Step step = step_from(process, actions, values);
    ++iterations;
    // Half of the bound asked, since the values are judged once more.
    const double asked = 0.5 * options.bound * largest_magnitude(values) * (1.0 - beta);
    if (step.residual <= asked) break;
    values = std::move(step.values);
    for (int sweep = 0; sweep < sweeps; ++sweep) {
      for (std::size_t s = 0; s < process.states; ++s) {
        if (step.greatest[s] != no_action) {
          values[s] = action_value(process.actions[step.greatest[s]], values);
        }
      }
    }
  }
  return judged(process, actions, std::move(values), options, iterations);
}

}  // namespace

Solution solve_discounted(const DecisionProcess& process, const DiscountedOptions& options) {
  require_sound(process);
  require(largest_weight_sum(process) < 1.0,
          "solve_discounted needs every action's weights to sum to less than 1");
  require(options.bound > 0.0, "solve_discounted needs bound > 0");
  require(options.max_iterations >= 1, "solve_discounted needs max_iterations >= 1");
  const ActionsOfStates actions(process);
  const bool dense = options.method == Method::policy_iteration ||
                     (options.method == Method::by_size && process.states <= options.dense_states);
  return dense ? by_policies(process, actions, options) : by_values(process, actions, options);
}

}  // namespace staddle::dp
