// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

namespace staddle::numeric {

// REQUIRES, all three: finite values.

// The arithmetic mean, in two passes. REQUIRES: not empty.
double mean(std::span<const double> values);

// The variance of the population the values were drawn from: squared deviations over
// count - 1. REQUIRES: at least 2 values.
double sample_variance(std::span<const double> values);

// The value below which the given fraction of the sorted values lies, interpolated
// linearly between neighbours: type 7 of Hyndman & Fan 1996, Amer. Statist. 50:361.
// With n values in order x(1) <= ... <= x(n) and h = (n - 1) fraction, it is
// x(1 + floor h) + (h - floor h) (x(2 + floor h) - x(1 + floor h)).
// Worked example: quantile({1, 2, 4, 8}, 0.25) has h = 0.75 and is 1.75.
// REQUIRES: not empty, 0 <= fraction <= 1. The order of the values does not matter.
double quantile(std::vector<double> values, double fraction);

}  // namespace staddle::numeric
