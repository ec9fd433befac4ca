// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "io/csv.h"

namespace staddle {

// How the name of a column or key of tons ends, behind that of the product.
inline constexpr std::string_view tons_ending = "_tons_ac";

// The columns of a table, found by name wherever they stand.
class CsvColumns {
 public:
  // Reports into `faults`: columns that the table does not have (with the nearest that it
  // has), columns that stand there twice, and required ones that are missing. `file` must
  // outlive this.
  CsvColumns(const CsvRow& header, std::span<const char* const> known,
             std::span<const char* const> required, const std::string& file, Faults& faults);

  bool has(std::string_view column) const { return places_.contains(column); }

  // Whether the row has as many cells as the header; reports it where not.
  bool fits(const CsvRow& row, Faults& faults) const;

  // What stands in a row, without blanks around it; "" where the table has no such column.
  // REQUIRES: fits(row).
  std::string cell(const CsvRow& row, std::string_view column) const;

 private:
  const std::string* file_;
  std::map<std::string, std::size_t, std::less<>> places_;
  std::size_t cells_ = 0;
};

}  // namespace staddle
