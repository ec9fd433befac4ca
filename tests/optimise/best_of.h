// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/base/tolerance.h"
#include "staddle/optimise/solve.h"

namespace staddle::support {

// What the best regime is worth, dollars an acre.
inline double best_of(const StandProblem& problem) {
  return solve(problem).best.value.objective.in(dollars_per_acre);
}

inline bool at_least(double a, double b) { return a >= b || tolerance::values_tie(a, b); }

}  // namespace staddle::support
