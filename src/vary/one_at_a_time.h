// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "regime/same_regime.h"
#include "vary/answers.h"

namespace staddle {

// Each span at both ends, with the base optimum held and re-optimised; by swing.
std::vector<OneAtATime> one_at_a_time(Answers& answers, const VaryAnswer& base);

GridAnswer grid_answer(Answers& answers, const GridQuestion& question);

}  // namespace staddle
