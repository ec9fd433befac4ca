// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace staddle {

// A column of a table for people: its name, and the unit that stands beneath it.
struct TextColumn {
  std::string heading, unit;
  bool left = false;  // words; numbers stand to the right
};

// Headings, units, a rule, and the rows, two blanks between columns, no blank at the end
// of a line. REQUIRES: one cell per column in every row.
std::string text_table(const std::vector<TextColumn>& columns,
                       const std::vector<std::vector<std::string>>& rows);

}  // namespace staddle
