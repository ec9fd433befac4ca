// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace staddle {

// Square feet of cross-section of a stem one inch thick: pi / (4 x 144), in the
// rounding of the growth equations' source.
inline constexpr double basal_area_factor = 0.005454154;
inline constexpr double inches_per_foot = 12.0;
inline constexpr double square_feet_of_an_acre = 43560.0;

}  // namespace staddle
