// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <limits>
#include <string>
#include <vector>

namespace staddle::dp {

// A finite semi-Markov decision process, as data. In a state one of its actions is
// chosen; it pays a reward at once and leads to next states by chance. The weight of a
// transition is its probability times the discount factor over the time it takes, so
// steps may last differently long. The value of a state is
//
//   v(s) = max over actions a of s:  reward(a) + sum over transitions of weight v(next)
//
// and v(s) = 0 for a state without actions: an end.
//
// Worked example, reproduced by the test "header example". States 0, 1, 2, 3 (an end):
//
//   action  state  reward  transitions
//   0       0      1       1 by 0.5, 2 by 0.5
//   1       0      2       2 by 1
//   2       1      6       3 by 1
//   3       1      0       2 by 2
//   4       2      4       3 by 1
//   5       2      3       3 by 1
//
//   Walking back from the end:                                  value  action
//   v(3) = 0                                                    0      none
//   v(2) = max(4 + 0, 3 + 0)                                    4      4
//   v(1) = max(6 + 0, 0 + 2 x 4)                                8      3
//   v(0) = max(1 + 0.5 x 8 + 0.5 x 4, 2 + 1 x 4)                7      0
//
// (Taking the largest reward at each step would choose actions 1 and 4: only 6.)
//
// Tie rule, everywhere: of the actions whose value ties with the greatest, by
// tolerance::values_tie, the one with the lowest index.
struct Transition {
  std::size_t next_state = 0;
  double weight = 0.0;  // >= 0; the weights of one action need not sum to 1
};

struct Action {
  std::size_t state = 0;
  double reward = 0.0;
  std::vector<Transition> transitions;  // several may lead to one state
};

struct DecisionProcess {
  std::size_t states = 0;
  std::vector<Action> actions;  // in any order
};

// [state]: an index into DecisionProcess::actions, no_action for an end.
using Policy = std::vector<std::size_t>;
inline constexpr std::size_t no_action = std::numeric_limits<std::size_t>::max();

// What is wrong with the data, naming the action, or "" where nothing is: states out of
// range, a reward or weight that is not finite, a negative weight. Every solver
// REQUIRES that it is "".
std::string broken_promise(const DecisionProcess& process);

}  // namespace staddle::dp
