// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace staddle {

// A line is as wide as its letters are many, whatever bytes they take.
std::size_t width_of(const std::string& text);

// The text broken between words into lines of at most `width` letters; a longer word
// stands alone on its line. At least one line.
std::vector<std::string> lines_of_words(const std::string& text, std::size_t width);

// The same as one text: `first` before the first line, `next` before the others.
std::string wrapped(const std::string& text, const std::string& first, const std::string& next,
                    std::size_t width);

}  // namespace staddle
