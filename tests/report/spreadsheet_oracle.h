// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>
#include <vector>

// A spreadsheet program of others reads a workbook: its cells as the file keeps them, or
// computed anew.
namespace staddle::support {

bool spreadsheet_program_is_there();

using CellTexts = std::vector<std::vector<std::string>>;

struct OpenedWorkbook {
  std::map<std::string, CellTexts> sheets;  // by name; numbers in full digits

  const std::string& at(const std::string& sheet, std::size_t row, std::size_t column) const;
  double number(const std::string& sheet, std::size_t row, std::size_t column) const;
  // The row, counted from zero, whose first cell is this text.
  std::size_t row_of(const std::string& sheet, const std::string& first_cell) const;
};

// The cells as they were written.
OpenedWorkbook open_workbook(const std::string& path);
// Every formula computed anew from the numbers of the file.
OpenedWorkbook recalculate_workbook(const std::string& path);

// Requires of every cell that it is the same computed anew as it was written; returns how
// many numbers there were.
std::size_t numbers_computed_as_written(const std::string& path);

}  // namespace staddle::support
