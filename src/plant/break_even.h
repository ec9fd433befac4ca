// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>

#include "staddle/plant/plant_problem.h"
#include "staddle/plant/plant_solution.h"

namespace staddle {

// Land expectation value of an alternative's best regime; minus infinity without one.
using AlternativeValue = std::function<double(const EstablishmentAlternative&)>;

// The response at which `alternative`, now worth `value`, is worth `target`. Upwards where it
// is worth less, downwards where it is worth more. REQUIRES: growth by equations.
BreakEvenResponse break_even_of(const EstablishmentAlternative& alternative, Height site_index,
                                double value, double target, const AlternativeValue& value_of);

}  // namespace staddle
