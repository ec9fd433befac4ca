// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <compare>

#include "staddle/units/units.h"

namespace staddle {

// A position in time: two of a kind subtract to Years, and never add.
template <class Line>
class TimePoint {
 public:
  constexpr TimePoint() = default;
  static constexpr TimePoint of(double years_from_origin) { return TimePoint(years_from_origin); }
  constexpr double in(Unit<YearsDimension>) const { return years_; }
  // The whole years completed. REQUIRES: not negative, and below 2^31.
  constexpr int whole() const { return static_cast<int>(years_); }

  friend constexpr Years operator-(TimePoint a, TimePoint b) { return years(a.years_ - b.years_); }
  friend constexpr TimePoint operator+(TimePoint a, Years span) {
    return TimePoint(a.years_ + span.in(years));
  }
  friend constexpr TimePoint operator-(TimePoint a, Years span) {
    return TimePoint(a.years_ - span.in(years));
  }
  friend constexpr auto operator<=>(TimePoint, TimePoint) = default;

 private:
  constexpr explicit TimePoint(double years_from_origin) : years_(years_from_origin) {}
  double years_ = 0.0;
};

using Age = TimePoint<struct AgeLine>;                    // since planting
using CalendarYear = TimePoint<struct CalendarYearLine>;  // of the common era

constexpr Age age(double years_since_planting) { return Age::of(years_since_planting); }
constexpr CalendarYear calendar_year(double year) { return CalendarYear::of(year); }

}  // namespace staddle
