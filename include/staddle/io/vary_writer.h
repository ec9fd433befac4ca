// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/scenario/scenario.h"
#include "staddle/vary/vary_solution.h"

namespace staddle {

// What varying a scenario came to as JSON, format staddle-vary/1, numbers in full
// precision; and as CSV (RFC 4180): one table of all, a line per cell, per loss of a regime
// in a cell, per cell of the grid, per end of a parameter and per break-even, told apart by
// the first column; what a line does not have is an empty cell.
// REQUIRES: the solution of this scenario.
std::string vary_json(const Scenario& scenario, const VarySolution& solution);
std::string vary_csv(const VarySolution& solution);

}  // namespace staddle
