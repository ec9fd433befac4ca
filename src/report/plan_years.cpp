// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/plan_years.h"

#include <algorithm>

namespace staddle::sheets {
namespace {

bool falls(const DatedFlow& flow, int age_yr, bool first_thinning_past) {
  if (age_yr < flow.from.whole()) return false;
  if (flow.until == DatedFlow::Until::age) return age_yr <= flow.to.whole();
  return flow.until != DatedFlow::Until::first_thinning || !first_thinning_past;
}

// Flows and practices of one year of a stand that stands; those of planting for bare land.
void add_dated_money(const std::vector<DatedFlow>& flows, const std::vector<Practice>& practices,
                     bool at_planting, bool first_thinning_past, PlanYear& year) {
  const int age_yr = year.at.whole();
  if (year.from_now > 0) {
    for (std::size_t i = 0; i < flows.size(); ++i) {
      if (falls(flows[i], age_yr, first_thinning_past)) year.flows.push_back(i);
    }
  }
  if (year.from_now == 0 && !at_planting) return;
  for (std::size_t i = 0; i < practices.size(); ++i) {
    if (practices[i].at.whole() == age_yr) year.practices.push_back(i);
  }
}

}  // namespace

std::vector<PlanYear> years_of(const RegimeReport& report, const Scenario& scenario,
                               const std::vector<Practice>& practices, bool standing) {
  const auto delay = static_cast<std::size_t>(scenario.costs.regeneration_delay_yr);
  std::vector<PlanYear> result(report.years.size() + delay);
  bool first_thinning_past =
      standing && scenario.stand.standing && scenario.stand.standing->last_thinning;
  int entry = 0;
  for (std::size_t i = 0; i < result.size(); ++i) {
    PlanYear& year = result[i];
    year.from_now = static_cast<int>(i);
    year.at = report.years.front().at + years(static_cast<double>(i));
    for (std::size_t back = 1; back <= std::min(delay, i); ++back) {
      year.waiting += result[i - back].bare;
    }
    if (i >= report.years.size()) continue;
    year.record = &report.years[i];
    year.entered = i == 0 ? 1.0 : report.years[i - 1].share_standing;
    year.left = year.record->share_standing;
    year.harvest = i + 1 == report.years.size();
    year.bare = year.harvest ? year.entered : year.entered - year.left;
    add_dated_money(scenario.costs.flows, practices, i == 0 && !standing, first_thinning_past,
                    year);
    for (const ThinningRecord& thinning : report.thinnings) {
      if (thinning.cuts_nothing || thinning.at != year.at) continue;
      year.thinning = &thinning;
      year.entry = ++entry;
      first_thinning_past = true;
    }
  }
  return result;
}

}  // namespace staddle::sheets
