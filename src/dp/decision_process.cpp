// SPDX-License-Identifier: GPL-3.0-or-later
#include "dp/decision_process.h"

#include <cmath>

namespace staddle::dp {

std::string broken_promise(const DecisionProcess& process) {
  for (std::size_t i = 0; i < process.actions.size(); ++i) {
    const Action& action = process.actions[i];
    const std::string name = "action " + std::to_string(i);
    const std::string of_states = " of " + std::to_string(process.states) + " states";
    if (action.state >= process.states) {
      return name + " belongs to state " + std::to_string(action.state) + of_states;
    }
    if (!std::isfinite(action.reward)) return name + " has a reward that is not finite";
    for (const Transition& transition : action.transitions) {
      if (transition.next_state >= process.states) {
        return name + " leads to state " + std::to_string(transition.next_state) + of_states;
      }
      if (!std::isfinite(transition.weight) || transition.weight < 0.0) {
        return name + " has a weight of " + std::to_string(transition.weight) +
               ", which is not a finite number from 0 up";
      }
    }
  }
  return "";
}

}  // namespace staddle::dp
