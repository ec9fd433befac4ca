// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/advise/storm_forecast.h"
#include "staddle/scenario/scenario.h"

namespace staddle {

// The futures as JSON, format staddle-storm/1, numbers in full precision; and as CSV (RFC
// 4180), a line per regime under one heading per key, an absent value an empty cell.
// REQUIRES: the forecast of this scenario, not stopped.
std::string storm_json(const Scenario& scenario, const StormForecast& forecast);
std::string storm_csv(const StormForecast& forecast);

}  // namespace staddle
