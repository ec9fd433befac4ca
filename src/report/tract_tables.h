// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "report/tract_years.h"
#include "staddle/report/report.h"
#include "staddle/tract/tract_solution.h"

// The tables of a tract's plan.
namespace staddle {

// "thinning", "final harvest", "planting".
std::string name_of(const TractAction& job);

// What to do in which year in which stand.
Section jobs_section(const TractFile& tract, const TractSolution& solution);
// Money, acres and tons by period.
Section money_section(const TractFile& tract, const TractSolution& solution);
// The regimes of every stand beside its own best.
Section stands_section(const TractFile& tract, const TractSolution& solution);

}  // namespace staddle
