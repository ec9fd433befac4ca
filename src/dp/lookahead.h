// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <vector>

#include "dp/decision_process.h"

namespace staddle::dp {

// Each state's actions, by rising index.
class ActionsOfStates {
 public:
  // REQUIRES: broken_promise(process) is "".
  explicit ActionsOfStates(const DecisionProcess& process);
  const std::vector<std::size_t>& of(std::size_t state) const { return actions_[state]; }

 private:
  std::vector<std::vector<std::size_t>> actions_;
};

// reward + sum of weight x value of the next state.
double action_value(const Action& action, const std::vector<double>& values);

struct Choice {
  std::size_t action;    // by the tie rule
  std::size_t greatest;  // the lowest index that reaches the greatest value exactly
  double value;          // the greatest of all actions
};

// REQUIRES: `candidates` is not empty.
Choice best_choice(const DecisionProcess& process, const std::vector<std::size_t>& candidates,
                   const std::vector<double>& values);

bool all_finite(const std::vector<double>& values);

// Throws ContractViolation with what broken_promise says.
void require_sound(const DecisionProcess& process);

// The largest sum of an action's weights; 0 without actions.
double largest_weight_sum(const DecisionProcess& process);

// The values of following one policy for ever, by elimination with pivoting of
// (I - W) v = reward; empty where the system is singular.
std::vector<double> value_of_policy(const DecisionProcess& process, const Policy& policy);

}  // namespace staddle::dp
