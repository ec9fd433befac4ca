// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "report/plan_table.h"

namespace staddle::sheets {

// What other sheets show of a plan; cells as they see them.
struct PlanCells {
  Live value;  // land expectation value; standing: forest value
  Live net_present_value, annual_equivalent;
  std::string benefit_cost, internal_rate;  // cells that may hold a word
  std::optional<double> benefit_cost_now, internal_rate_now;
};

// Writes the sheet of one plan: what it is worth, and its cash flow, an acre.
PlanCells write_plan(Sheet& sheet, const PlanSheet& plan, const Scenario& scenario,
                     const Inputs& inputs);

}  // namespace staddle::sheets
