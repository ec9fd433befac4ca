// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <regex>
#include <string>

namespace staddle::support {

// How many regimes are priced depends on the vectors of the processor, the answer does not.
inline std::string without_count(const std::string& text) {
  return std::regex_replace(text, std::regex("[0-9,]+(\\s+were\\s+priced)"), "some$1");
}

}  // namespace staddle::support
