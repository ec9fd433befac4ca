// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/io/option.h"

// Ranges that keys of several blocks allow.
namespace staddle::ranges {

inline constexpr NumberRange ages = from_to(1, 150);    // years
inline constexpr NumberRange prices = from_to(0, 1e5);  // dollars a ton
inline constexpr NumberRange fractions = from_below(0, 1);

}  // namespace staddle::ranges
