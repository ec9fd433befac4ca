// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "io/scenario_blocks.h"

namespace staddle {

// What the plots that a stand block names say of the stand.
struct CruisedStand {
  PlotSample sample;                      // its measured stand without an age
  std::optional<Height> dominant_height;  // absent: too few heights were measured
};

// Loads the tally of stand.cruise and works out the stand's measures. Reports what is wrong
// with the block and the tally, and measures given beside it, and then returns nothing.
std::optional<CruisedStand> read_cruised_stand(ScenarioReading& reading, const Place& stand);

}  // namespace staddle
