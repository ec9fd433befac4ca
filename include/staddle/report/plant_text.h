// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/plant/plant_solution.h"
#include "staddle/report/report.h"
#include "staddle/scenario/scenario.h"

namespace staddle {

// How to start the next stand, for a landowner: the best way and what it costs, the others
// beside it, what would have to come true for the order to turn, the rules of time and law,
// the species the ground asks for, and where the figures come from. Its sections may stand
// in other reports.
// REQUIRES: the solution of this scenario.
Report plant_report(const Scenario& scenario, const PlantSolution& solution);

// to_text(plant_report(...)).
std::string plant_text(const Scenario& scenario, const PlantSolution& solution);

}  // namespace staddle
