// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/futures/futures_options.h"
#include "staddle/futures/futures_problem.h"
#include "staddle/futures/futures_solution.h"

namespace staddle {

// Draws the futures and says how each regime fares in them. The same answer to the bit
// whatever the number of threads: a future depends on its number alone, and all sums run
// in the order of the futures.
//
// Worked example: a stand worth 1000 $/ac when it is harvested in a year; v = 0.8; land
// worth nothing; one peril with p = 0.25, D = 0.5, s = 0.2, K = 100. A calm future is
// worth 0.8 x 1000 = 800, a struck one 0.8 (0.5 x 1000 + 0.5 (200 - 100)) = 440; the
// expected value is 710, the worst event 0.5 (0.8 x 1000 + 100) = 450 $/ac, and a quarter
// of the futures loses half the stand.
//
// A regime costs a table by age of all that does not depend on the storms; then a future
// is a draw a year and a few sums a storm.
// REQUIRES: options.futures within its limits.
FuturesSolution simulate_futures(const FuturesProblem& problem,
                                 const FuturesOptions& options = {});

}  // namespace staddle
