// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/report/report.h"
#include "staddle/scenario/scenario.h"
#include "staddle/vary/vary_solution.h"

namespace staddle {

// What would change the advice, for a landowner or a consultant: the plan that is never
// far from the best first, then the table of rates and prices, the plans side by side, one
// figure at a time, two at a time, and the values at which the advice turns.
// REQUIRES: the solution of this scenario.
Report vary_report(const Scenario& scenario, const VarySolution& solution);

// The title of its section on one figure at a time.
inline constexpr const char* one_at_a_time_title = "One figure at a time";

// to_text(vary_report(...)).
std::string vary_text(const Scenario& scenario, const VarySolution& solution);

}  // namespace staddle
