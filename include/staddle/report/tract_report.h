// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/report/report.h"
#include "staddle/scenario/tract_file.h"
#include "staddle/tract/tract_solution.h"

namespace staddle {

// A plan of a tract, for a landowner: what it is worth beside the best without limits, what
// to do in which year in which stand, money by period, what every limit costs, or which
// limits conflict and the most that can be had; each stand beside its own best plan.
// REQUIRES: the solution of this tract.
Report tract_report(const TractFile& tract, const TractSolution& solution);

// to_text(tract_report(...)).
std::string tract_text(const TractFile& tract, const TractSolution& solution);

}  // namespace staddle
