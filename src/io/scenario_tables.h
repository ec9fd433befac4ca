// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "io/scenario_blocks.h"

namespace staddle {

// Loads and reads the yield table whose file name stands at `file`. Faults of the file
// are listed where the scenario names it.
std::optional<YieldTable> load_yield_table(ScenarioReading& reading, const Place& file);

// Reads the tables of several fixed regimes and what their cuts yield. Returns whether
// all of them could be read; then `source` holds them.
bool read_tabled_regimes(ScenarioReading& reading, const Place& tables, GrowthSource& source);

}  // namespace staddle
