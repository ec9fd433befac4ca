// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace staddle {

// "growth -15 %" -> "growth 15 percent lower"; what is no such change stays as it is.
std::string change_in_words(const std::string& change);

}  // namespace staddle
