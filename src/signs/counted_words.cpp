// SPDX-License-Identifier: GPL-3.0-or-later
#include "signs/counted_words.h"

#include <fmt/format.h>

#include <cmath>

#include "signs/plain_words.h"

namespace staddle::words {

std::string named_beside(const std::string& shown, const std::string& name) {
  return shown == "1" ? name : name + "s";
}

std::string counted(double value, const std::string& name, int decimals) {
  const std::string shown = number(value, decimals);
  return shown + " " + named_beside(shown, name);
}

std::string acres_of(Area area) {
  const double value = area.in(acres);
  constexpr double least = 0.001;
  if (value < least) return "less than 0.001 acres";
  if (value >= 1.0) {
    const bool whole = std::fabs(value - std::round(value)) < 0.05;  // shown with one decimal
    return counted(value, "acre", whole ? 0 : 1);
  }
  const std::string shown = fmt::format("{:.2g}", value);
  return shown + " " + named_beside(shown, "acre");
}

}  // namespace staddle::words
