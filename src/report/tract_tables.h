// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "report/tract_years.h"
#include "staddle/report/report.h"
#include "staddle/tract/tract_solution.h"

// The tables of a tract's plan.
namespace staddle {

// "thinning", "final harvest", "planting".
std::string name_of(const TractAction& job);
// What the job cuts, all products together.
Weight all_tons(const TractAction& job);
// The jobs as a crew sees them: parts of a stand that are treated alike in one year are one
// job; parts too small to be shown, and what they bring, are left out.
std::vector<TractAction> jobs_of(const TractSolution& solution);

// What to do in which year in which stand.
Section jobs_section(const TractFile& tract, const TractSolution& solution);
// Money, acres and tons by period.
Section money_section(const TractFile& tract, const TractSolution& solution);
// The regimes of every stand beside its own best.
Section stands_section(const TractFile& tract, const TractSolution& solution);

}  // namespace staddle
