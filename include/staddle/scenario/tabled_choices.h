// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "staddle/advise/advise.h"
#include "staddle/scenario/scenario.h"

namespace staddle {

// One choice per table of a list of tabled regimes, in its order. It may end at every row
// after its last thinning that lies within the final-harvest ages allowed.
// REQUIRES: a scenario that the reader accepted, whose source is such a list.
std::vector<TabledChoice> make_tabled_choices(const Scenario& scenario);

}  // namespace staddle
