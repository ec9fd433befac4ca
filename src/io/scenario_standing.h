// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <string_view>

#include "io/scenario_blocks.h"

namespace staddle {

// The measures that make a stand a standing one; all of them are needed.
inline constexpr std::array<std::string_view, 3> standing_measures = {"age_yr", "tpa",
                                                                      "basal_area_ft2_ac"};

// Reads the measured trees of the stand block and brings them to the present year.
// `source_known`: block.source holds what the stand grows by.
void read_standing_stand(ScenarioReading& reading, const Place& stand, bool source_known,
                         StandBlock& block);

}  // namespace staddle
