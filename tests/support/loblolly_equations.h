// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/growth/equation_set.h"

namespace staddle::support {

// The two fits of Harrison & Borders (1996), technical report 1996-1, University of
// Georgia, transcribed second-hand, so that tests below io have the curvature of
// real equations. The files in models/ are checked against published values elsewhere.
EquationSet coastal_loblolly();
EquationSet upland_loblolly();

}  // namespace staddle::support
