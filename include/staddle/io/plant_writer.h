// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <string>

#include "staddle/plant/plant_solution.h"
#include "staddle/scenario/scenario.h"

namespace staddle {

// Ways to start the next stand compared, as JSON, format staddle-plant/1, numbers in full
// precision; and as CSV (RFC 4180): a line per alternative, in the order of the file.
// REQUIRES: the solution of this scenario.
std::string plant_json(const Scenario& scenario, const PlantSolution& solution);
std::string plant_csv(const PlantSolution& solution);

// The text of a scenario with this alternative in use. Comments of the text are lost.
// `relocate` tells what a file that the scenario names is called from the new one's folder.
// REQUIRES: a text that the reader accepted, with an establishment block.
std::string scenario_using(const std::string& scenario, const std::string& alternative,
                           const std::function<std::string(const std::string&)>& relocate);

}  // namespace staddle
