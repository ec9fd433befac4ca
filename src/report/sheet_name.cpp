// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "report/utf8.h"
#include "report/workbook.h"

namespace staddle::sheets {
namespace {

constexpr std::size_t longest_name = 31;  // UTF-16 units

char lower(char c) {
  return static_cast<unsigned char>(c) < 0x80
             ? static_cast<char>(std::tolower(static_cast<unsigned char>(c)))
             : c;
}

bool same_name(const std::string& a, const std::string& b) {
  return std::ranges::equal(a, b, {}, lower, lower);
}

// Only what a sheet's name may hold, single blanks between words, no longer than so many
// units, without blanks and apostrophes at its ends.
std::string fit(const std::string& wanted, std::size_t units) {
  std::string name;
  std::size_t used = 0;
  for (std::size_t at = 0; at < wanted.size();) {
    std::string letter(utf8::letter_at(wanted, at));
    at += letter.size();
    const auto byte = static_cast<unsigned char>(letter.front());
    if (letter.size() == 1 && (byte < 0x20 || byte == 0x7F ||
                               std::string("[]:*?/\\").find(letter) != std::string::npos)) {
      letter = " ";
    }
    if (letter == " " && (name.empty() || name.back() == ' ')) continue;
    if (letter == "'" && name.empty()) continue;
    if (used + utf8::utf16_units(letter) > units) break;
    used += utf8::utf16_units(letter);
    name += letter;
  }
  while (!name.empty() && (name.back() == ' ' || name.back() == '\'')) name.pop_back();
  return name;
}

}  // namespace

std::string sheet_name(const std::string& wanted, const std::vector<std::string>& taken) {
  std::string stem = fit(wanted, longest_name);
  // Spreadsheets keep the name History for themselves.
  if (stem.empty() || same_name(stem, "History")) stem = fit("Sheet " + stem, longest_name);
  std::string name = stem;
  const auto is_taken = [&](const std::string& other) { return same_name(other, name); };
  for (int number = 2; std::ranges::any_of(taken, is_taken); ++number) {
    const std::string ending = fmt::format(" ({})", number);
    name = fit(stem, longest_name - ending.size()) + ending;
  }
  return name;
}

}  // namespace staddle::sheets
