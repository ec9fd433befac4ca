// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/tract_years.h"

#include <fmt/format.h>

namespace staddle {

std::string PlanYears::name(int year) const {
  if (calendar()) return std::to_string(present_->whole() + year);
  return year == 0 ? "now" : fmt::format("year {}", year);
}

std::string PlanYears::span(int from, int to) const {
  if (from == to) return name(from);
  if (!calendar()) return fmt::format("years {}-{}", from, to);
  return fmt::format("{}-{}", present_->whole() + from, present_->whole() + to);
}

std::string PlanYears::in(int year) const {
  if (!calendar() && year == 0) return "now";
  return "in " + name(year);
}

}  // namespace staddle
