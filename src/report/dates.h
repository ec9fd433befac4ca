// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "staddle/scenario/scenario.h"

namespace staddle {

// Ages as one says them: calendar years where the present one is known, else ages.
class Dates {
 public:
  explicit Dates(const Scenario& scenario);

  Age present() const { return present_; }
  bool calendar() const { return present_year_.has_value(); }
  int years_until(Age at) const { return at.whole() - present_.whole(); }
  // REQUIRES: calendar().
  int year_of(Age at) const;

  std::string in(Age at) const;             // "in 2029, at age 17"; "at age 17"
  std::string name(Age at) const;           // "2029"; "age 17"
  // "from 2027 to 2030", "in 2027"; "from age 15 to 18", "at age 15"
  std::string within(Age from, Age to) const;
  std::string on(Age at) const;             // "in 2029"; "at age 17"
  std::string wait(Age at) const;           // "two years"; "one year"

 private:
  Age present_;
  std::optional<CalendarYear> present_year_;
};

}  // namespace staddle
