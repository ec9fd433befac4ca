// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <chrono>
#include <string>
#include <vector>

#include "staddle/advise/advice.h"
#include "staddle/scenario/scenario.h"
#include "staddle/scenario/tract_file.h"
#include "staddle/tract/tract_solution.h"

namespace staddle {

using CalendarDay = std::chrono::year_month_day;

// A piece of work and the season that it belongs to. Seasons and lead times are common
// practice without a source, unless `basis` says otherwise.
struct Operation {
  std::string key;          // "thinning-1-marking": the same whenever the plan is the same
  std::string what;         // "Mark thinning 1"
  CalendarDay first, last;  // both days included
  std::string details;      // sentences
  std::string caution;      // where work can hurt someone or break a rule; may be empty
  std::string basis;        // "common practice, no source"
};

// The work of the best plan, from the present to the planting after the final harvest (where
// the land is replanted), in the order of its first days. A cut of a year is sold early in
// that year and done after it, or in the month that the site names.
// REQUIRES: the advice of this scenario, and its present year.
std::vector<Operation> operations(const Scenario& scenario, const Advice& advice);

// The same of every stand of a tract under its part of the plan, as far as the plan's years
// go; trees planted within them are told up to their release, not to their own thinnings.
// REQUIRES: the solution of this tract, and its present year.
std::vector<Operation> operations(const TractFile& tract, const TractSolution& solution);

}  // namespace staddle
