// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <catch2/catch.hpp>
#include <cmath>
#include <string>

#include "staddle/units/age.h"
#include "staddle/units/quantity.h"

namespace staddle::support {

// Relative: two orders of summation of the same few dozen terms.
inline constexpr double round_off = 1e-12;
// Relative: two methods that each solve to about 1e-9, a program's and an oracle's.
inline constexpr double two_methods = 1e-8;
// Dollars: two amounts that print as the same cent, give or take one rounding.
inline constexpr double half_cent = 0.005;

// CHECK(actual == relative(expected, round_off))
inline Catch::Detail::Approx relative(double expected, double tolerance) {
  return Catch::Detail::Approx(expected).epsilon(tolerance);
}

// CHECK(actual == within(expected, half_cent)): absolute, in the unit of `expected`.
inline Catch::Detail::Approx within(double expected, double tolerance) {
  return Catch::Detail::Approx(expected).epsilon(0).margin(tolerance);
}

// A value that a source printed with so many decimals: half a unit of the last one.
inline Catch::Detail::Approx as_printed(double expected, int decimals) {
  return within(expected, 0.5 * std::pow(10.0, -decimals) * (1 + round_off));
}

}  // namespace staddle::support

// Failing checks show the number of a quantity or a date.
namespace Catch {
template <class Dimension>
struct StringMaker<staddle::Quantity<Dimension>> {
  static std::string convert(staddle::Quantity<Dimension> quantity) {
    return StringMaker<double>::convert(quantity.in(staddle::Unit<Dimension>{}));
  }
};
template <class Line>
struct StringMaker<staddle::TimePoint<Line>> {
  static std::string convert(staddle::TimePoint<Line> point) {
    return StringMaker<double>::convert(point.in(staddle::years));
  }
};
}  // namespace Catch
