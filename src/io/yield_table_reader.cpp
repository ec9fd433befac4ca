// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/yield_table_reader.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "io/csv.h"
#include "io/csv_columns.h"
#include "io/number_text.h"
#include "io/option_check.h"
#include "products/assortment_kernel.h"
#include "staddle/io/option.h"

namespace staddle {
namespace {

constexpr std::size_t least_rows = 4;  // the fewest that the interpolation takes

struct TableColumn {
  std::string name;
  std::string unit;
  NumberRange range;
};

// The columns that every table has, then what all product columns share.
const std::array<TableColumn, 4> stand_columns = {{
    {"age_yr", "years", from_to(1, 150)},
    {"dominant_height_ft", "ft", above_to(0, 500)},
    {"tpa", "trees/ac", above_to(0, 1e5)},
    {"basal_area_ft2_ac", "ft2/ac", from_to(0, 1000)},
}};
const TableColumn tons_column = {"", "tons/ac", from_to(0, 1e5)};

class YieldTableReader {
 public:
  YieldTableReader(const std::string& file, Faults& faults) : file_(file), faults_(faults) {
    table_.file = file;
  }

  YieldTable read(const CsvTable& csv) {
    read_header(csv.header);
    if (!faults_.empty()) return table_;  // cells would be blamed for the header
    for (const CsvRow& row : csv.rows) read_row(row);
    if (csv.rows.size() < least_rows) {
      fault(FaultCode::out_of_range, "",
            "found " + std::to_string(csv.rows.size()) + " rows; a yield table has at least " +
                std::to_string(least_rows));
    }
    return table_;
  }

 private:
  void read_header(const CsvRow& header) {
    std::vector<std::string> known;
    for (const TableColumn& column : stand_columns) known.push_back(column.name);
    for (const std::string& name : header.cells) {
      const std::string place = csv_place(header.line, name);
      if (std::count(header.cells.begin(), header.cells.end(), name) > 1) {
        if (std::count(columns_.begin(), columns_.end(), name) == 1) {
          fault(FaultCode::repeated_key, place, "this column stands here twice");
        }
      } else if (is_product(name)) {
        table_.products.push_back(name.substr(0, name.size() - tons_ending.size()));
        if (has_control_character(name)) {
          fault(FaultCode::out_of_range, place, "a control character stands in the name");
        }
      } else if (std::find(known.begin(), known.end(), name) == known.end()) {
        const std::string hint = did_you_mean(nearest_name(name, known));
        fault(FaultCode::unknown_key, place, "there is no such column",
              hint.empty() ? "the column of a product ends in _tons_ac" : hint);
      }
      columns_.push_back(name);
    }
    for (const std::string& name : known) {
      if (std::find(columns_.begin(), columns_.end(), name) == columns_.end()) {
        fault(FaultCode::missing_key, csv_place(header.line, name), "this column is required");
      }
    }
    if (table_.products.empty() || table_.products.size() > max_products) {
      fault(FaultCode::out_of_range, "line " + std::to_string(header.line),
            "found " + std::to_string(table_.products.size()) +
                " columns of tons by product; allowed are 1 to " + std::to_string(max_products),
            "name them <product>_tons_ac, largest product first");
    }
    table_.tons_ac.resize(table_.products.size());
  }

  void read_row(const CsvRow& row) {
    if (row.cells.size() != columns_.size()) {
      fault(FaultCode::malformed, "line " + std::to_string(row.line),
            "found " + std::to_string(row.cells.size()) + " cells; the header has " +
                std::to_string(columns_.size()),
            "write decimals with a point, not a comma");
      return;
    }
    std::size_t product = 0;
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      const bool tons = is_product(columns_[i]);
      const double value = cell(row, i, column_of(columns_[i]));
      if (tons) {
        table_.tons_ac[product++].push_back(value);
      } else if (columns_[i] == "age_yr") {
        add_age(row, value);
      } else if (columns_[i] == "dominant_height_ft") {
        table_.dominant_height_ft.push_back(value);
      } else if (columns_[i] == "tpa") {
        table_.tpa.push_back(value);
      } else {
        table_.basal_area_ft2_ac.push_back(value);
      }
    }
  }

  // The number in a cell; 0, reported, where none that is allowed stands there.
  double cell(const CsvRow& row, std::size_t index, const TableColumn& column) {
    const std::string place = csv_place(row.line, columns_[index]);
    const auto value = csv_number(row.cells[index], file_, place, faults_);
    if (!value) return 0;
    if (column.range.contains(*value)) return *value;
    const Option bounds{
        .pointer = "", .meaning = "", .unit = column.unit, .allowed = {}, .range = column.range};
    fault(FaultCode::out_of_range, place,
          "found " + number_text(*value) + "; allowed is a number " + range_text(bounds));
    return 0;
  }

  void add_age(const CsvRow& row, double value) {
    const std::string place = csv_place(row.line, "age_yr");
    if (value != std::floor(value)) {
      fault(FaultCode::wrong_type, place, "found " + number_text(value) + "; ages are whole years");
    } else if (value > 0 && value <= latest_age_) {
      fault(FaultCode::contradiction, place,
            "found " + number_text(value) + " below " + number_text(latest_age_) +
                "; ages rise from row to row");
    }
    latest_age_ = std::max(latest_age_, value);
    table_.age_yr.push_back(static_cast<int>(value));
  }

  static bool is_product(const std::string& name) {
    return name.size() > tons_ending.size() &&
           std::string_view(name).substr(name.size() - tons_ending.size()) == tons_ending;
  }
  static const TableColumn& column_of(const std::string& name) {
    if (is_product(name)) return tons_column;
    return *std::find_if(stand_columns.begin(), stand_columns.end(),
                         [&](const TableColumn& column) { return column.name == name; });
  }

  void fault(FaultCode code, std::string place, std::string text, std::string hint = "") {
    faults_.push_back({code, file_, std::move(place), std::move(text), std::move(hint)});
  }

  const std::string& file_;
  Faults& faults_;
  YieldTable table_;
  std::vector<std::string> columns_;
  double latest_age_ = 0;
};

}  // namespace

Result<YieldTable> read_yield_table(const std::string& text, const std::string& file) {
  Faults faults;
  const auto csv = parse_csv(text, file, faults);
  if (!csv) return faults;
  YieldTable table = YieldTableReader(file, faults).read(*csv);
  if (!faults.empty()) return faults;
  return table;
}

}  // namespace staddle
