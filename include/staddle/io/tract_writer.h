// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/scenario/tract_file.h"
#include "staddle/tract/tract_solution.h"

// The answers to a tract, in full precision. REQUIRES of both: the solution of this tract.
namespace staddle {

// Format staddle-tract-plan/1.
std::string tract_json(const TractFile& tract, const TractSolution& solution);

// One table; the column kind says what a line is: a "period", a "year" of the plan, the
// acres of a "stand" under one regime, or a "job" in the woods.
std::string tract_csv(const TractSolution& solution);

}  // namespace staddle
