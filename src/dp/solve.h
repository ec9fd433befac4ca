// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "dp/decision_process.h"
#include "staddle/base/tolerance.h"

namespace staddle::dp {

enum class Status {
  optimal,            // residual_bound <= what was asked (0 for the two exact solvers)
  limit_reached,      // max_iterations came first
  has_cycle,          // solve_acyclic only: some state can be reached from itself
  numerical_trouble,  // a value is not finite, or rounding keeps the bound above what was asked
};

// What the fields mean:
//
//   status             values, policy          residual_bound
//   optimal            the optimum             as asked or better
//   limit_reached      the best found          what was reached
//   has_cycle          empty                   infinite
//   numerical_trouble  the best found, or      what was reached; infinite
//                      empty                   where empty
struct Solution {
  Status status = Status::numerical_trouble;
  std::vector<double> values;  // [state]
  Policy policy;
  // No value is farther than this from the optimum, rounding of its own sum aside:
  // max over states |T v - v| / (1 - beta), with T v the right side of the recurrence
  // and beta the largest sum of an action's weights.
  double residual_bound = std::numeric_limits<double>::infinity();
  int iterations = 0;
  std::string message;  // one sentence on the status
};

// Backward induction along a process in which no state can be reached from itself; the
// weights may be as large as they like. Exact; time and space in proportion to the
// transitions.
Solution solve_acyclic(const DecisionProcess& process);

struct FiniteOptions {
  int horizon = 1;                    // steps to go; >= 0
  std::vector<double> values_at_end;  // [state], finite; empty: all 0
};

// [n]: with n steps to go, 0 <= n <= horizon.
struct FiniteSolution {
  Status status = Status::numerical_trouble;  // optimal, or a value that is not finite
  std::vector<std::vector<double>> values;    // empty in numerical trouble
  std::vector<Policy> policies;               // [0] chooses nothing
  std::string message;
};

// Backward induction over a number of steps: v_n(s) = max of reward + sum of weight
// v_(n-1)(next). An end keeps its value at the end. Exact; horizon x transitions.
FiniteSolution solve_finite(const DecisionProcess& process, const FiniteOptions& options);

enum class Method {
  by_size,            // policy iteration up to dense_states states, else successive values
  policy_iteration,   // Howard 1960; each policy valued by a dense linear solve: states^3
  successive_values,  // value iteration, each step valuing its policy by some sweeps
                      // (Puterman & Shin 1978, Manage. Sci. 24:1127)
};

struct DiscountedOptions {
  Method method = Method::by_size;
  std::size_t dense_states = 300;
  // Asked: residual_bound <= bound x max(1, largest |value|). > 0.
  double bound = tolerance::tie;
  int max_iterations = 100'000;  // >= 1
};

// The process that goes on for ever. The policy may lose residual_bound, and the tie
// tolerance per step for ties.
// REQUIRES: beta < 1 (see Solution::residual_bound).
Solution solve_discounted(const DecisionProcess& process, const DiscountedOptions& options = {});

// The twin of solve_acyclic and solve_discounted for tiny processes: values every policy
// by a linear solve and takes the best; of policies that tie in every state, the first
// in lexicographic order. The status is optimal or numerical trouble.
// REQUIRES: no cycle, or beta < 1; at most 1,000,000 policies.
Solution solve_by_enumeration(const DecisionProcess& process);

}  // namespace staddle::dp
