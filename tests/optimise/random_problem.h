// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/base/random.h"
#include "staddle/optimise/solve.h"

namespace staddle::support {

// What a random stand problem has to contain; all else is drawn.
struct ProblemKind {
  bool storms = false;
  int max_thinnings = 2;     // the most; drawn from 0 unless `just_so`
  bool just_so = false;      // exactly max_thinnings
  int removals = 6;          // at most so many removal fractions
  int years = 22;            // the thinning window is at most so wide
  bool tables = false;       // growth by a yield table, its diameters not always rising
  bool responses = false;    // years gained, hardwoods, a thinned young stand
};

// The four perils of the southern pine tables with probabilities of a random zone.
Hazard random_hazard(RandomStream& random);

// A yield table of a plausible stand; some begin with rows that bear no timber.
YieldTable random_table(RandomStream& random);

// Bare or standing, either fit or now and then a yield table, either response, guards
// on or off or some of them, cut diameter ratios .85 to 1.1, costs and prices of the
// usual size, a growth multiplier now and then.
StandProblem random_problem(RandomStream& random, const ProblemKind& kind);

// Coastal fit, site 70, 600 planted, 5 percent, prices 7/18/25, establishment 350: the
// plain case that invariants vary.
StandProblem plain_problem();

}  // namespace staddle::support
