// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace staddle::json {

// "line 3, column 7" of a byte of the text.
std::string line_and_column(std::string_view text, std::size_t offset);

// A JSON text made ready for a parser that stops at the first number it cannot hold.
struct ScannedText {
  // As long as the original: comments blanked, NaN, Infinity and numbers that overflow
  // replaced by zeros.
  std::string text;
  // Those numbers as they were written, by their rank among all numbers of the text.
  std::map<std::size_t, std::string> without_value;
  // Where brackets first stand deeper than `most_levels`.
  std::optional<std::size_t> too_deep;
};

ScannedText scan(std::string_view text, int most_levels);

}  // namespace staddle::json
