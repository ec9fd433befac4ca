// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/json_scan.h"

#include <algorithm>
#include <array>

#include "io/number_text.h"

namespace staddle::json {
namespace {

bool is_word_character(char c) {
  return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '+' ||
         c == '-' || c == '.';
}

bool is_not_a_number(std::string_view word) {
  if (!word.empty() && (word[0] == '-' || word[0] == '+')) word.remove_prefix(1);
  std::string lower(word);
  std::transform(lower.begin(), lower.end(), lower.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
  static constexpr std::array<std::string_view, 3> names = {"nan", "inf", "infinity"};
  return std::find(names.begin(), names.end(), lower) != names.end();
}

bool is_number(std::string_view word) {
  if (!word.empty() && word[0] == '-') word.remove_prefix(1);
  return !word.empty() && word[0] >= '0' && word[0] <= '9';
}

// The offset behind the text that begins at `at` with a quotation mark.
std::size_t behind_text(std::string_view text, std::size_t at) {
  for (++at; at < text.size(); ++at) {
    if (text[at] == '\\') {
      ++at;
    } else if (text[at] == '"') {
      return at + 1;
    }
  }
  return text.size();
}

}  // namespace

std::string line_and_column(std::string_view text, std::size_t offset) {
  const std::string_view before = text.substr(0, std::min(offset, text.size()));
  const auto line = 1 + std::count(before.begin(), before.end(), '\n');
  const std::size_t newline = before.rfind('\n');
  const std::size_t column =
      newline == std::string_view::npos ? before.size() + 1 : before.size() - newline;
  return "line " + std::to_string(line) + ", column " + std::to_string(column);
}

ScannedText scan(std::string_view text, int most_levels) {
  ScannedText scanned{std::string(text), {}, std::nullopt};
  std::size_t numbers = 0;
  int level = 0;
  std::size_t at = 0;
  const auto blank = [&](std::size_t from, std::size_t to, char first) {
    std::fill(scanned.text.begin() + static_cast<std::ptrdiff_t>(from),
              scanned.text.begin() + static_cast<std::ptrdiff_t>(to), ' ');
    scanned.text[from] = first;
  };
  while (at < text.size()) {
    const char c = text[at];
    if (c == '"') {
      at = behind_text(text, at);
    } else if (text.substr(at, 2) == "//") {
      const std::size_t end = std::min(text.find('\n', at), text.size());
      blank(at, end, ' ');
      at = end;
    } else if (is_word_character(c)) {
      std::size_t end = at;
      while (end < text.size() && is_word_character(text[end])) ++end;
      const std::string_view word = text.substr(at, end - at);
      const bool named = is_not_a_number(word);
      if (named || (is_number(word) && overflows(word))) {
        scanned.without_value.emplace(numbers, std::string(word));
        blank(at, end, '0');
      }
      if (named || is_number(word)) ++numbers;
      at = end;
    } else {
      if (c == '{' || c == '[') ++level;
      if (c == '}' || c == ']') --level;
      if (level > most_levels && !scanned.too_deep) scanned.too_deep = at;
      ++at;
    }
  }
  return scanned;
}

}  // namespace staddle::json
