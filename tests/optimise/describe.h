// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/optimise/stand_solution.h"

namespace staddle::support {

// A regime as one line of text to the last bit: two regimes are the same when their
// lines are.
std::string describe(const Regime& regime);
// The same with the value that the plain evaluator gave it.
std::string describe(const PricedRegime& priced);
// All that both methods of solving have to agree upon.
std::string describe(const StandSolution& solution);

}  // namespace staddle::support
