// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <deque>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "report/live.h"

struct lxw_workbook;
struct lxw_worksheet;
struct lxw_format;

// A spreadsheet file as its writers see it: sheets, cells, looks. The library that writes
// it is known to workbook.cpp alone.
namespace staddle::sheets {

// How a cell looks and how its number is shown. An input is a cell that the reader of the
// sheet may change.
enum class Look {
  plain,
  wrapped,
  title,
  heading,  // of a block
  column,   // heading of a column
  unit,     // beneath it
  note,
  whole,    // 62
  year,     // 2027, without a separator
  tenths,   // 12.3
  share,    // 0.9731
  dollars,  // 1,234.56
  tract,    // 1,234
  percent,  // 5.25%
  total,    // dollars, in bold
  total_tract,
  input_dollars,
  input_percent,
  input_number,
  input_text,
};

class Sheet {
 public:
  const std::string& name() const { return name_; }

  // A text is a text, whatever it begins with; what is longer than a cell holds is cut.
  void text(Place place, const std::string& text, Look look = Look::plain);
  // REQUIRES, both: finite.
  void number(Place place, double value, Look look);
  // Returns the cell, for formulas of this sheet.
  Live formula(Place place, const Live& formula, Look look);
  // A formula whose value is now this text.
  void formula(Place place, const std::string& formula, const std::string& text, Look look);

  // A cell of this sheet, for formulas of others.
  Live seen_from_outside(Place place, double value) const;

  void width(int first_column, int last_column, double letters);
  void height(int row, double points);
  void freeze(Place first_that_moves);
  // Letter paper.
  struct Print {
    bool landscape = false;
    int pages_wide = 1;
    std::optional<std::pair<int, int>> rows_on_top = std::nullopt;  // of every page, from zero
    int columns_at_left = 0;                                        // of every page
  };
  void print_setup(const Print& print);
  // An input takes numbers of this range alone.
  void allow(Place place, double least, double most, const std::string& why);
  // Bars: names in one column, numbers in another, rows from first to last.
  struct Bars {
    Place at;
    std::string title, axis, series;
    int names_column = 0, values_column = 0;
    int first_row = 0, last_row = 0;
    bool from_zero = false;  // no number is negative
  };
  void bars(const Bars& bars);

 private:
  friend class Workbook;
  Sheet(class Workbook& book, lxw_worksheet* sheet, std::string name)
      : book_(book), sheet_(sheet), name_(std::move(name)) {}

  class Workbook& book_;
  lxw_worksheet* sheet_;
  std::string name_;
};

class Workbook {
 public:
  // The file appears at `path` when the workbook is closed.
  explicit Workbook(const std::string& path);
  ~Workbook();
  Workbook(const Workbook&) = delete;
  Workbook& operator=(const Workbook&) = delete;

  // The sheet's name is the wanted one, made fit for a sheet and different from the others.
  Sheet& add_sheet(const std::string& wanted_name);
  // What went wrong with the file; nothing when all went well. REQUIRES: not closed before.
  std::optional<std::string> close();

 private:
  friend class Sheet;
  lxw_format* format(Look look);

  std::string path_;
  lxw_workbook* book_;
  std::deque<Sheet> sheets_;  // never move
  std::map<Look, lxw_format*> formats_;
};

// At most 31 UTF-16 units, none of []:*?/\ nor control characters, no apostrophe at either
// end, not empty, and not equal to any of `taken` whatever the case.
std::string sheet_name(const std::string& wanted, const std::vector<std::string>& taken);

}  // namespace staddle::sheets
