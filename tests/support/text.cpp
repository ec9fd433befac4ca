// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/text.h"

#include <sstream>

namespace staddle::support {

std::vector<std::string> lines_of(const std::string& text) {
  std::istringstream stream(text);
  std::vector<std::string> lines;
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

std::string on_one_line(const std::string& text) {
  std::string one_line;
  for (const char c : text) {
    const bool blank = c == '\n' || c == ' ';
    if (!blank || (!one_line.empty() && one_line.back() != ' ')) one_line += blank ? ' ' : c;
  }
  return one_line;
}

bool says(const std::string& text, const std::string& words) {
  return on_one_line(text).find(words) != std::string::npos;
}

std::ptrdiff_t occurrences(const std::string& text, const std::string& what) {
  std::ptrdiff_t found = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) {
    ++found;
  }
  return found;
}

}  // namespace staddle::support
