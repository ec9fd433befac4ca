// SPDX-License-Identifier: GPL-3.0-or-later
#include "tract/tract_column.h"

#include <cmath>

#include "staddle/base/tolerance.h"

namespace staddle {

TractColumn column_of(const std::vector<StandModel>& models, std::size_t stand,
                      const Limits& limits, const Regime& regime) {
  const StandModel& model = models[stand];
  const AcreFlows flows = model.flows_of(model.report_of(regime), limits.plan_years);
  TractColumn column{stand, regime, flows.present_value, flows.ending_value, {}};
  for (std::size_t r = 0; r < limits.rows.size(); ++r) {
    if (!limits.rows[r].counts(model.group)) continue;
    const double use = use_of(limits.rows[r], limits, flows);
    // Crumbs of the growth equations, 1e-90 of a ton, would spoil the program's scaling.
    const double crumb =
        limits.rows[r].is_of_acres() ? tolerance::limit_slack : tolerance::use_crumb;
    if (std::fabs(use) > crumb) column.uses.push_back({r, use});
  }
  return column;
}

double worth_of(const TractColumn& column, const std::vector<double>& worths) {
  double worth = column.value;
  for (const lp::Term& use : column.uses) worth += worths[use.index] * use.value;
  return worth;
}

}  // namespace staddle
