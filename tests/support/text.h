// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace staddle::support {

std::vector<std::string> lines_of(const std::string& text);

// Every run of blanks and line ends as one blank, so that words are found however they
// are wrapped; none at the beginning.
std::string on_one_line(const std::string& text);

// Whether these words stand in the text, however they are wrapped.
bool says(const std::string& text, const std::string& words);

// How often `what` begins in the text.
std::ptrdiff_t occurrences(const std::string& text, const std::string& what);

}  // namespace staddle::support
