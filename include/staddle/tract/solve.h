// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/base/result.h"
#include "staddle/tract/tract_options.h"
#include "staddle/tract/tract_problem.h"
#include "staddle/tract/tract_solution.h"

namespace staddle {

// The best schedule of a tract over all regimes of its stands' lattices, by linear
// programming. The columns, one regime of one stand each, are the evaluator's
// year-by-year reports spread over the periods of the plan. Column generation
// (Dantzig & Wolfe 1960, Oper. Res. 8:101) solves over few of them; each stand is then
// searched for a regime that would earn more at the limits' shadow prices, and when none
// does the few are proved to suffice: for prices pi of the limits, signs right,
//   bound = sum over stands of acres x max over regimes (value - pi x what it uses)
//           + pi x what the limits allow
// is above every plan, and the best plan reaches it.
//
// Worked example. No costs, no thinnings, land worth nothing once cut, 25 percent a year:
// a dollar is worth 0.80 next year, 0.64 the year after. An acre sells for $400 at age 20,
// 550 at 21, 750 at 22, 1,000 at 23. Stand A, 100 acres, is 20 years old, B, 50 acres, 21.
//   cut in year        0      1      2      worth today
//   A  400    440    480     best 100 x 480 = $48,000
//   B  550    600    640     best  50 x 640 = $32,000
// No limits: both are cut in year 2, for $80,000. Now $48,500 of income are wanted within
// the first year (years 0 and 1). A dollar of it costs
//   A cut now 80/400 = 0.200, next year 40/550 = 0.073; B now 90/550 = 0.164, next year
//   40/750 = 0.053
// so all of B is cut next year, for 37,500, and 20 acres of A, for 11,000. The plan is worth
// 80,000 - 50 x 40 - 20 x 40 = $77,200, and a further $1,000 would cost 1,000 x 40/550 = $72.73.
//
// Faults: those of faults_of(), and stands or successors without any regime within their
// limits ("/stands/3", FaultCode::no_regime).
// The same plan to the byte on any number of threads, and whatever the order of the stands:
// inside they are taken in the order of their names.
Result<TractSolution> solve(const TractProblem& problem, const TractOptions& options = {});

}  // namespace staddle
