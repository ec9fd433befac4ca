// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>

#include "dp/decision_process.h"
#include "staddle/base/random.h"

namespace staddle::dp {

// The process of decision_process.h: values 7, 8, 4, 0 by the actions 0, 3, 4, none.
inline DecisionProcess header_example() {
  return {4,
          {{0, 1, {{1, 0.5}, {2, 0.5}}},
           {0, 2, {{2, 1}}},
           {1, 6, {{3, 1}}},
           {1, 0, {{2, 2}}},
           {2, 4, {{3, 1}}},
           {2, 3, {{3, 1}}}}};
}

struct RandomShape {
  std::size_t states = 4;
  std::size_t most_actions = 3;  // of a state; a state may have none
  bool acyclic = false;          // then transitions lead to later states, by any weight
  double largest_beta = 0.95;    // of a cyclic one
};

// Rewards are whole numbers, so that ties are met with.
inline DecisionProcess random_process(RandomStream& random, const RandomShape& shape) {
  DecisionProcess process{shape.states, {}};
  for (std::size_t s = 0; s < shape.states; ++s) {
    const auto count = random.next_below(shape.most_actions + 1);
    for (std::uint64_t i = 0; i < count; ++i) {
      Action action{s, static_cast<double>(random.next_below(21)) - 10.0, {}};
      const auto transitions = random.next_below(4);
      for (std::uint64_t k = 0; k < transitions; ++k) {
        if (shape.acyclic && s + 1 == shape.states) break;
        const std::size_t first = shape.acyclic ? s + 1 : 0;
        const std::size_t next = first + random.next_below(shape.states - first);
        const double most = shape.acyclic ? 2.0 : shape.largest_beta / 3.0;
        action.transitions.push_back({next, most * random.next_uniform()});
      }
      process.actions.push_back(action);
    }
  }
  return process;
}

}  // namespace staddle::dp
