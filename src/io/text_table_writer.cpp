// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/text_table_writer.h"

#include <fmt/format.h>

#include <algorithm>

#include "staddle/base/contract.h"

namespace staddle {
namespace {

// As wide as its letters are many.
std::size_t width_of(const std::string& text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
  }));
}

std::string line_of(const std::vector<TextColumn>& columns, const std::vector<std::size_t>& widths,
                    const std::vector<std::string>& cells) {
  std::string line;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const std::string padding(widths[i] - width_of(cells[i]), ' ');
    if (i > 0) line += "  ";
    line += columns[i].left ? cells[i] + padding : padding + cells[i];
  }
  line.erase(line.find_last_not_of(' ') + 1);
  return line + "\n";
}

}  // namespace

std::string text_table(const std::vector<TextColumn>& columns,
                       const std::vector<std::vector<std::string>>& rows) {
  std::vector<std::string> headings, units;
  std::vector<std::size_t> widths;
  for (const TextColumn& column : columns) {
    headings.push_back(column.heading);
    units.push_back(column.unit);
    widths.push_back(std::max(width_of(column.heading), width_of(column.unit)));
  }
  std::size_t rule = 0;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    for (const auto& row : rows) {
      require(row.size() == columns.size(), "every row of a table has one cell per column");
      widths[i] = std::max(widths[i], width_of(row[i]));
    }
    rule += widths[i] + (i > 0 ? 2 : 0);
  }
  std::string table = line_of(columns, widths, headings) + line_of(columns, widths, units) +
                      std::string(rule, '-') + "\n";
  for (const auto& row : rows) table += line_of(columns, widths, row);
  return table;
}

}  // namespace staddle
