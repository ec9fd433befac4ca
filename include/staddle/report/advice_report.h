// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/advise/advice.h"
#include "staddle/report/report.h"
#include "staddle/scenario/scenario.h"

namespace staddle {

// The answer to one stand, for a landowner: the twelve lines, then tables, assumptions,
// cautions, sources and the proof. Money is rounded to $5 an acre and $500 a tract.
//   topic 1 the stand         5 final harvest             9 what would change the advice
//         2 what to do        6 if sold today            10 what could go wrong
//         3 what it yields    7 if left for five years   11 what it assumes
//         4 the next entry    8 the advantage            12 next month, and how to sell
// Bare land has no 6 and 7; there 2 is what to plant and 3 what it costs.
// `storm_zones`: the ids that a scenario may choose from, named where it chose none.
// REQUIRES: the advice of this scenario.
Report advice_report(const Scenario& scenario, const Advice& advice,
                     const std::vector<std::string>& storm_zones = {});

}  // namespace staddle
