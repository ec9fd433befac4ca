// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "report/answer.h"

namespace staddle {

// "91" of a basal area, "302" of trees an acre.
std::string square_feet(BasalArea basal_area);
std::string trees(TreeDensity density);

// How the trees of this cut of the plan are chosen; common practice, no source.
std::string pattern(const Answer& answer, const ThinningRecord& cut);

// Topic 2: what to do this season, and why.
std::string what_to_do(const Answer& answer);

}  // namespace staddle
