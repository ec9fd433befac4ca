// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "staddle/scenario/tract_file.h"

namespace staddle {

// Years of a plan as one says them: calendar years where the present one is known.
class PlanYears {
 public:
  explicit PlanYears(const TractFile& tract) : present_(tract.present_year) {}

  bool calendar() const { return present_.has_value(); }
  // "2031"; "year 4"; year 0 is the present: "2027", "now".
  std::string name(int year) const;
  // "2027-2032"; "years 1-5"; a single year as name().
  std::string span(int from, int to) const;
  // "in 2031"; "in year 4"; "now".
  std::string in(int year) const;

 private:
  std::optional<CalendarYear> present_;
};

}  // namespace staddle
