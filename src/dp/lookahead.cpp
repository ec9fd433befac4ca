// SPDX-License-Identifier: GPL-3.0-or-later
#include "dp/lookahead.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "staddle/base/contract.h"
#include "staddle/base/tolerance.h"

namespace staddle::dp {

ActionsOfStates::ActionsOfStates(const DecisionProcess& process) : actions_(process.states) {
  for (std::size_t i = 0; i < process.actions.size(); ++i) {
    actions_[process.actions[i].state].push_back(i);
  }
}

double action_value(const Action& action, const std::vector<double>& values) {
  double value = action.reward;
  for (const Transition& transition : action.transitions) {
    value += transition.weight * values[transition.next_state];
  }
  return value;
}

Choice best_choice(const DecisionProcess& process, const std::vector<std::size_t>& candidates,
                   const std::vector<double>& values) {
  require(!candidates.empty(), "a choice needs an action");
  std::size_t best = candidates.front();
  double greatest = action_value(process.actions[best], values);
  for (const std::size_t i : candidates) {
    const double value = action_value(process.actions[i], values);
    if (value <= greatest) continue;
    greatest = value;
    best = i;
  }
  const auto chosen = std::find_if(candidates.begin(), candidates.end(), [&](std::size_t i) {
    return tolerance::values_tie(greatest, action_value(process.actions[i], values));
  });
  // None ties where values have overflowed; the caller sees that the value is not finite.
  return {chosen == candidates.end() ? best : *chosen, best, greatest};
}

bool all_finite(const std::vector<double>& values) {
  return std::all_of(values.begin(), values.end(), [](double v) { return std::isfinite(v); });
}

void require_sound(const DecisionProcess& process) {
  const std::string broken = broken_promise(process);
  if (!broken.empty()) throw ContractViolation("decision process: " + broken);
}

double largest_weight_sum(const DecisionProcess& process) {
  double largest = 0.0;
  for (const Action& action : process.actions) {
    double sum = 0.0;
    for (const Transition& transition : action.transitions) sum += transition.weight;
    largest = std::max(largest, sum);
  }
  return largest;
}

std::vector<double> value_of_policy(const DecisionProcess& process, const Policy& policy) {
  const std::size_t n = process.states;
  // Row s: I - W, then the reward in column n.
  std::vector<std::vector<double>> rows(n, std::vector<double>(n + 1, 0.0));
  for (std::size_t s = 0; s < n; ++s) {
    rows[s][s] = 1.0;
    if (policy[s] == no_action) continue;
    const Action& action = process.actions[policy[s]];
    rows[s][n] = action.reward;
    for (const Transition& t : action.transitions) rows[s][t.next_state] -= t.weight;
  }
  for (std::size_t column = 0; column < n; ++column) {
    std::size_t pivot = column;
    for (std::size_t r = column + 1; r < n; ++r) {
      if (std::fabs(rows[r][column]) > std::fabs(rows[pivot][column])) pivot = r;
    }
    if (rows[pivot][column] == 0.0) return {};
    std::swap(rows[pivot], rows[column]);
    for (std::size_t r = column + 1; r < n; ++r) {
      const double factor = rows[r][column] / rows[column][column];
      if (factor == 0.0) continue;
      for (std::size_t c = column; c <= n; ++c) rows[r][c] -= factor * rows[column][c];
    }
  }
  std::vector<double> values(n, 0.0);
  for (std::size_t s = n; s-- > 0;) {
    double rest = rows[s][n];
    for (std::size_t c = s + 1; c < n; ++c) rest -= rows[s][c] * values[c];
    values[s] = rest / rows[s][s];
  }
  return values;
}

}  // namespace staddle::dp
