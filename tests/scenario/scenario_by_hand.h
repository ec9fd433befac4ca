// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/scenario/scenario.h"

namespace staddle::scenario_tests {

// Bare land of site 70 planted with 600 trees, coastal fit; decisions as in the format.
Scenario bare_land_by_hand();

// The same site with a measured stand, 17 years old.
Scenario standing_by_hand();

// Bare land on a table of ages 10 to 40.
Scenario table_by_hand();

}  // namespace staddle::scenario_tests
