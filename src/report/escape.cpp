// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/escape.h"

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

std::string markdown(const std::string& text) {
  constexpr std::string_view anywhere = "\\`*_[]<>|~^";
  constexpr std::string_view at_start = "#+-=!:";
  const std::string line = one_line(text);
  const std::size_t start = line.find_first_not_of(' ');
  std::size_t after_digits = start;  // "12." and "12)" would begin a list
  while (after_digits < line.size() && line[after_digits] >= '0' && line[after_digits] <= '9') {
    ++after_digits;
  }
  std::string escaped;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const char c = line[i];
    if (c == '&') {
      escaped += "&amp;";
      continue;
    }
    const bool opens = i == start && at_start.find(c) != std::string_view::npos;
    const bool lists = i == after_digits && i > start && (c == '.' || c == ')');
    if (anywhere.find(c) != std::string_view::npos || opens || lists) escaped += '\\';
    escaped += c;
  }
  return escaped;
}

}  // namespace staddle::escape
