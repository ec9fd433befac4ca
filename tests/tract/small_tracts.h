// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "staddle/base/random.h"
#include "staddle/tract/tract_problem.h"

namespace staddle::support {

// The worked example of staddle/tract/solve.h, without its limit.
TractProblem two_stands();
// The same with other tons an acre at ages 20 to 23.
TractProblem two_stands_worth(const std::vector<double>& tons_ac);

struct TractKind {
  int stands = 4;
  bool storms = false;
};

// A tract of small random stands, standing and bare, under no limits.
TractProblem random_tract(RandomStream& random, const TractKind& kind);

// Limits of every kind that the tract can often but not always keep, each with some chance.
void add_random_limits(RandomStream& random, TractProblem& problem);

}  // namespace staddle::support
