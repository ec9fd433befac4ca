// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/report/figure.h"
#include "staddle/scenario/tract_file.h"
#include "staddle/tract/tract_solution.h"

// The figures of a tract's plan, by its periods.
namespace staddle {

// REQUIRES: a solution with periods.
Figure tract_money_figure(const TractFile& tract, const TractSolution& solution, Table table);
Figure tract_tons_figure(const TractFile& tract, const TractSolution& solution);
Figure tract_harvest_figure(const TractFile& tract, const TractSolution& solution);

}  // namespace staddle
