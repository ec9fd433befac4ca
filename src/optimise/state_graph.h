// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "dp/decision_process.h"
#include "optimise/lattice_rules.h"

namespace staddle {

// The lattice as a decision process. State 0 is where the stand starts; every other is
// the stand just after one cut, reached by one path only.
struct StateGraph {
  dp::DecisionProcess process;
  bool complete = false;  // false: more than `most_states`, the rest left out
};

StateGraph make_state_graph(const CaseKernel& kernel, const LatticeRules& rules,
                            double land_value_usd_ac, std::size_t most_states);

}  // namespace staddle
