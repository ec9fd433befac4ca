// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/changes.h"

#include <string_view>

namespace staddle {

std::string change_in_words(const std::string& change) {
  const std::size_t sign = change.find_first_of("+-");
  const std::size_t unit = change.find(" %");
  if (sign == std::string::npos || unit == std::string::npos || unit < sign) return change;
  return change.substr(0, sign) + change.substr(sign + 1, unit - sign - 1) + " percent " +
         (change[sign] == '-' ? "lower" : "higher");
}

std::vector<std::string> changes_drawn_together(const std::vector<std::string>& in_words) {
  constexpr std::string_view lower = " lower", higher = " higher";
  std::vector<std::string> drawn;
  for (const std::string& change : in_words) {
    const bool up = change.ends_with(higher);
    const std::string stem = change.substr(0, change.size() - (up ? higher.size() : 0));
    if (up && !drawn.empty() && drawn.back() == stem + std::string(lower)) {
      drawn.back() += " or higher";
    } else {
      drawn.push_back(change);
    }
  }
  return drawn;
}

}  // namespace staddle
