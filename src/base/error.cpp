// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/base/error.h"

#include <algorithm>
#include <numeric>

namespace staddle {
namespace {

// Levenshtein distance, one row at a time.
std::size_t edit_distance(const std::string& a, const std::string& b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t substituted = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
      diagonal = row[j];
      row[j] = std::min({substituted, row[j] + 1, row[j - 1] + 1});
    }
  }
  return row[b.size()];
}

}  // namespace

std::string to_line(const Fault& fault) {
  std::string line = fault.file;
  for (const std::string* part : {&fault.place, &fault.text}) {
    if (part->empty()) continue;
    if (!line.empty()) line += ": ";
    line += *part;
  }
  if (!fault.hint.empty()) line += " (" + fault.hint + ")";
  return line;
}

std::string nearest_name(const std::string& name, const std::vector<std::string>& known) {
  constexpr std::size_t longest_name = 64;  // beyond it nothing can be a misspelling
  std::string nearest;
  if (name.size() > longest_name) return nearest;
  std::size_t least = std::max<std::size_t>(2, name.size() / 3) + 1;
  for (const std::string& candidate : known) {
    const std::size_t distance = edit_distance(name, candidate);
    const bool shares_a_letter = distance < std::max(name.size(), candidate.size());
    if (distance < least && shares_a_letter) {
      least = distance;
      nearest = candidate;
    }
  }
  return nearest;
}

}  // namespace staddle
