// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

// Boost 1.74's pchip.hpp calls isnan unqualified and compiles only after <math.h>
// (not <cmath>). It is included nowhere else, so that no sorting of include lines
// can part the two.
// clang-format off
#include <math.h>  // NOLINT(modernize-deprecated-headers): see above
#include <boost/math/interpolators/pchip.hpp>
// clang-format on
