// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/advise/storm_forecast.h"
#include "staddle/report/report.h"
#include "staddle/scenario/scenario.h"

namespace staddle {

// The futures of a stand for a landowner: what the best plan is worth in good and bad
// luck, then the plans side by side, their worst storms, whether the simulation agrees
// with the expected values, and the acres to be lost year by year.
// REQUIRES: the forecast of this scenario, not stopped.
Report storm_report(const Scenario& scenario, const StormForecast& forecast);

// to_text(storm_report(...)).
std::string storm_text(const Scenario& scenario, const StormForecast& forecast);

}  // namespace staddle
