// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "io/csv_columns.h"
#include "io/json_tree.h"

namespace staddle {

// The columns of a table of stands. Only name, acres and model are required; a blank cell
// is an absent key, and so is every cell of a column that is left out.
class StandColumns {
 public:
  // Reports into `faults` what is wrong with the header. `file` must outlive this.
  StandColumns(const CsvRow& header, const std::string& file, Faults& faults);

  std::string name(const CsvRow& row) const;  // "" where the row has another number of cells

  // The row as an entry {name, acres, group, stand} of stands that share a file's blocks.
  // Its orders count from `order` on, the entry itself first. Reports a wrong number of
  // cells and cells that are no number; a cell that was reported is there and not usable.
  json::Node entry(const CsvRow& row, int order, Faults& faults) const;

  // A fault at a pointer of such an entry, put at the line and column it comes from.
  Fault placed(Fault fault, int line) const;

 private:
  const std::string* file_;
  CsvColumns columns_;
};

}  // namespace staddle
