// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/tract/tract_solution.h"
#include "tract/schedule.h"

namespace staddle {

// The schedule as it is told. `unlimited`: the tract's worth with every stand under its own
// best plan, dollars.
TractSolution tract_answer(const TractProblem& problem, const std::vector<StandModel>& models,
                           const Limits& limits, const Schedule& schedule, double unlimited);

// tract_answer's parts.
std::vector<LimitCost> limit_costs_of(const TractProblem& problem, const Limits& limits,
                                      const Schedule& schedule);
std::vector<LimitConflict> conflicts_of(const TractProblem& problem, const Limits& limits,
                                        const Schedule& schedule);
// Actions, periods and years.
void tell_flows(const TractProblem& problem, const std::vector<StandModel>& models,
                TractSolution& solution);

}  // namespace staddle
