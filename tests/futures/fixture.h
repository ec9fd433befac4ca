// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/base/random.h"
#include "staddle/futures/simulate_futures.h"

namespace staddle::support {

// A pine stand from an invented yield table of every year from 5 to 60: bare land,
// 5 percent, establishment 350, 8 a year, waiting a year to replant, four perils of the
// usual kind at a storm-ridden coast.
StandCase coastal_case();
// The same stand measured at 16, thinned two years before, land worth 600.
StandCase standing_case();

// A sale of 1000 $/ac in a year, as in the header of simulate_futures.
FuturesProblem header_example();

Peril constant_peril(double annual_probability, double damage_share);

// Stands, costs, hazards and regimes of one or two thinnings drawn at random.
FuturesProblem random_problem(RandomStream& random);

}  // namespace staddle::support
