// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/escape.h"

#include <algorithm>
#include <string_view>

namespace staddle::escape {
namespace {

bool is_control(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return byte < 0x20 || byte == 0x7F;
}

}  // namespace

std::string one_line(const std::string& text) {
  std::string line;
  for (const char c : text) line += is_control(c) ? ' ' : c;
  return line;
}

std::string markup(const std::string& text) {
  std::string escaped;
  for (const char c : one_line(text)) {
    switch (c) {
      case '&':
        escaped += "&amp;";
        break;
      case '<':
        escaped += "&lt;";
        break;
      case '>':
        escaped += "&gt;";
        break;
      case '"':
        escaped += "&quot;";
        break;
      case '\'':
        escaped += "&#39;";
        break;
      default:
        escaped += c;
    }
  }
  return escaped;
}

std::string markdown_within(const std::string& text) {
  constexpr std::string_view special = "\\`*_[]<>|~^";
  std::string escaped;
  for (const char c : one_line(text)) {
    if (c == '&') {
      escaped += "&amp;";
      continue;
    }
    if (special.find(c) != std::string_view::npos) escaped += '\\';
    escaped += c;
  }
  return escaped;
}

std::string markdown(const std::string& text) {
  constexpr std::string_view at_start = "#+-=!:";
  const std::string line = one_line(text);
  const std::size_t start = std::min(line.find_first_not_of(' '), line.size());
  std::size_t from = start;  // "12." and "12)" would begin a list
  while (from < line.size() && line[from] >= '0' && line[from] <= '9') ++from;
  const bool lists = from > start && from < line.size() && (line[from] == '.' || line[from] == ')');
  const bool opens = start < line.size() && at_start.find(line[start]) != std::string_view::npos;
  if (!lists && !opens) return markdown_within(line);
  return line.substr(0, from) + '\\' + line[from] + markdown_within(line.substr(from + 1));
}

}  // namespace staddle::escape
