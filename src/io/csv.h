// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "staddle/base/error.h"

// Comma-separated values by RFC 4180: quoted cells, doubled quotation marks and line
// ends inside them. Besides: a byte order mark, LF or CRLF, a semicolon as delimiter
// where the header has semicolons and no commas, and lines that begin with #, which
// are comments. Lines without content are passed over.
namespace staddle {

struct CsvRow {
  int line = 0;  // of the file, from 1, on which the row begins
  std::vector<std::string> cells;
};

struct CsvTable {
  CsvRow header;
  std::vector<CsvRow> rows;
};

// Reports what is no such table (no text, no header, an open quotation, text behind a
// closing quotation mark) into `faults`, and then returns nothing.
std::optional<CsvTable> parse_csv(std::string_view text, const std::string& file, Faults& faults);

// "line 7, column tpa".
std::string csv_place(int line, const std::string& column);

// The number in a cell, blanks around it aside. Reports an empty cell, a decimal comma
// and anything else that is no finite number.
std::optional<double> csv_number(const std::string& cell, const std::string& file,
                                 const std::string& place, Faults& faults);

}  // namespace staddle
