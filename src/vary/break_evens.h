// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "vary/answers.h"

namespace staddle {

// The rate, prices, price factor of thinnings and establishment cost at which the advice
// or the sign of the land's worth turns; by parameter. `names`: of the products.
// `base`: the answer as things are.
std::vector<BreakEven> break_evens(Answers& answers, const VaryAnswer& base,
                                   const std::vector<std::string>& names);

}  // namespace staddle
