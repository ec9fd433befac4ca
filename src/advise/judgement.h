// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/advise/advice.h"

namespace staddle {

// One sentence that reconciles the signs of readiness with the plan: where the signs say
// due and the plan waits, what waiting earns; where the plan cuts and the signs do not
// ask for it, why.
std::string readiness_sentence(const Advice& advice, Age present);

}  // namespace staddle
