// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/wrap.h"

#include <algorithm>
#include <sstream>

namespace staddle {

std::size_t width_of(const std::string& text) {
  // Bytes that continue a letter of UTF-8 begin with the bits 10.
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
  }));
}

std::vector<std::string> lines_of_words(const std::string& text, std::size_t width) {
  std::istringstream words(text);
  std::vector<std::string> lines(1);
  for (std::string word; words >> word;) {
    std::string& line = lines.back();
    if (line.empty()) {
      line = word;
    } else if (width_of(line) + 1 + width_of(word) <= width) {
      line += " " + word;
    } else {
      lines.push_back(word);
    }
  }
  return lines;
}

std::string wrapped(const std::string& text, const std::string& first, const std::string& next,
                    std::size_t width) {
  std::string result;
  for (const std::string& line : lines_of_words(text, width - width_of(next))) {
    if (!result.empty()) result += "\n";
    result += (result.empty() ? first : next) + line;
  }
  return result;
}

}  // namespace staddle
