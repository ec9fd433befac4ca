// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/csv_columns.h"

#include <algorithm>

#include "io/option_check.h"

namespace staddle {

CsvColumns::CsvColumns(const CsvRow& header, std::span<const char* const> known,
                       std::span<const char* const> required, const std::string& file,
                       Faults& faults)
    : file_(&file), cells_(header.cells.size()) {
  const std::vector<std::string> names(known.begin(), known.end());
  const auto fault = [&](FaultCode code, const std::string& column, std::string text,
                         std::string hint = "") {
    faults.push_back(
        {code, file, csv_place(header.line, column), std::move(text), std::move(hint)});
  };
  for (std::size_t i = 0; i < header.cells.size(); ++i) {
    const std::string name = trimmed(header.cells[i]);
    if (std::find(names.begin(), names.end(), name) == names.end()) {
      fault(FaultCode::unknown_key, name, "there is no such column",
            did_you_mean(nearest_name(name, names)));
    } else if (!places_.emplace(name, i).second) {
      fault(FaultCode::repeated_key, name, "this column stands here twice");
    }
  }
  for (const char* name : required) {
    if (!has(name)) fault(FaultCode::missing_key, name, "this column is required");
  }
}

bool CsvColumns::fits(const CsvRow& row, Faults& faults) const {
  if (row.cells.size() == cells_) return true;
  faults.push_back({FaultCode::malformed, *file_, "line " + std::to_string(row.line),
                    "found " + std::to_string(row.cells.size()) + " cells; the header has " +
                        std::to_string(cells_),
                    "write decimals with a point, not a comma"});
  return false;
}

std::string CsvColumns::cell(const CsvRow& row, std::string_view column) const {
  const auto place = places_.find(column);
  return place == places_.end() ? "" : trimmed(row.cells.at(place->second));
}

}  // namespace staddle
