// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "staddle/base/error.h"
#include "staddle/base/result.h"

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

// The rows of a text, one after the other, so that a long file need not be held in cells.
class CsvRows {
 public:
  // The faults of a text that cannot be read at all; else the rows before the first.
  // `text` and `file` must outlive the rows.
  static Result<CsvRows> of(std::string_view text, const std::string& file);

  // The next row with content, the header first. Reports an open quotation and text
  // behind a closing quotation mark into `faults`; the row that it gives is then moot.
  std::optional<CsvRow> next(Faults& faults);

 private:
  CsvRows(std::string_view text, const std::string& file) : text_(text), file_(&file) {}

  void choose_delimiter();
  CsvRow read_row(Faults& faults);
  std::string read_cell(Faults& faults);
  std::string read_quoted(Faults& faults);
  void end_line();
  void fault(int line, std::string text, std::string hint, Faults& faults) const;

  std::string_view text_;
  const std::string* file_;
  std::size_t at_ = 0;
  int line_ = 1;
  char delimiter_ = 0;  // none yet: the header chooses
};

// Reports what is no such table (no text, no header, an open quotation, text behind a
// closing quotation mark) into `faults`, and then returns nothing.
std::optional<CsvTable> parse_csv(std::string_view text, const std::string& file, Faults& faults);

// Without the blanks around it.
std::string trimmed(std::string_view text);

// "line 7, column tpa".
std::string csv_place(int line, const std::string& column);

// The number in a cell, blanks around it aside. Reports an empty cell, a decimal comma
// and anything else that is no finite number.
std::optional<double> csv_number(const std::string& cell, const std::string& file,
                                 const std::string& place, Faults& faults);

}  // namespace staddle
