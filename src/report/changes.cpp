// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/changes.h"

namespace staddle {

std::string change_in_words(const std::string& change) {
  const std::size_t sign = change.find_first_of("+-");
  const std::size_t unit = change.find(" %");
  if (sign == std::string::npos || unit == std::string::npos || unit < sign) return change;
  return change.substr(0, sign) + change.substr(sign + 1, unit - sign - 1) + " percent " +
         (change[sign] == '-' ? "lower" : "higher");
}

}  // namespace staddle
