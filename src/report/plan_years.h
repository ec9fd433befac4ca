// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "staddle/report/stand_answers.h"

namespace staddle::sheets {

// One year of a plan: what a spreadsheet takes from the evaluator as numbers.
struct PlanYear {
  int from_now = 0;
  Age at;
  double entered = 0.0;                      // shares of the acres: standing when the year began,
  double left = 0.0;                         // after its storms and before any cut,
  double bare = 0.0;                         // turned bare by storm or harvest,
  double waiting = 0.0;                      // and bare since earlier years, not planted yet
  const YearRecord* record = nullptr;        // absent after the harvest
  const ThinningRecord* thinning = nullptr;  // the cut of this year, where it cuts something
  int entry = 0;                             // its number, from 1
  bool harvest = false;
  std::vector<std::size_t> practices, flows;  // those that fall in this year
};

// From the present to the last year in which the land waits to be planted again.
// `practices`: of this stand; flows are those of the scenario.
std::vector<PlanYear> years_of(const RegimeReport& report, const Scenario& scenario,
                               const std::vector<Practice>& practices, bool standing);

}  // namespace staddle::sheets
