// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "io/fault_list.h"
#include "io/place.h"
#include "staddle/tract/tract_problem.h"

namespace staddle {

// The block "plan" of a checked tree, its defaults filled in. Reports limits that say
// nothing. What a fault makes meaningless stays at its default.
TractPlan read_tract_plan(const Place& plan, FaultList& faults);

}  // namespace staddle
