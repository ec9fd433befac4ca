// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace staddle {

// "growth -15 %" -> "growth 15 percent lower"; what is no such change stays as it is.
std::string change_in_words(const std::string& change);

// Of neighbors that go the same way up and down one: "growth 15 percent lower or higher".
std::vector<std::string> changes_drawn_together(const std::vector<std::string>& in_words);

}  // namespace staddle
