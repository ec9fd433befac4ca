// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/csv.h"

#include <algorithm>

#include "io/number_text.h"

namespace staddle {
namespace {

constexpr std::size_t most_bytes_shown = 40;

bool has_decimal_comma(const std::string& cell) {
  if (std::count(cell.begin(), cell.end(), ',') != 1) return false;
  std::string with_point = cell;
  std::replace(with_point.begin(), with_point.end(), ',', '.');
  return parse_number(with_point).has_value();
}

}  // namespace

std::string trimmed(std::string_view text) {
  const std::size_t begin = text.find_first_not_of(" \t");
  if (begin == std::string_view::npos) return "";
  return std::string(text.substr(begin, text.find_last_not_of(" \t") - begin + 1));
}

Result<CsvRows> CsvRows::of(std::string_view text, const std::string& file) {
  static constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
  if (text.substr(0, 3) == byte_order_mark) text.remove_prefix(3);
  if (text.find('\0') != std::string_view::npos || !is_utf8(text)) {
    return Faults{{FaultCode::unreadable, file, "", "this is not a text in UTF-8",
                   "save the sheet as CSV in UTF-8"}};
  }
  return CsvRows(text, file);
}

std::optional<CsvRow> CsvRows::next(Faults& faults) {
  while (at_ < text_.size()) {
    if (text_[at_] == '#') {
      at_ = std::min(text_.find('\n', at_), text_.size());
      end_line();
      continue;
    }
    if (delimiter_ == 0) choose_delimiter();
    CsvRow row = read_row(faults);
    const bool blank = row.cells.size() == 1 && row.cells[0].empty();
    if (!blank) return row;
  }
  return std::nullopt;
}

// A blank line before the header chooses nothing.
void CsvRows::choose_delimiter() {
  const std::string_view line = text_.substr(at_, text_.find('\n', at_) - at_);
  if (line.find_first_not_of(" \t\r") == std::string_view::npos) return;
  const bool commas = line.find(',') != std::string_view::npos;
  const bool semicolons = line.find(';') != std::string_view::npos;
  delimiter_ = semicolons && !commas ? ';' : ',';
}

CsvRow CsvRows::read_row(Faults& faults) {
  CsvRow row{line_, {}};
  while (true) {
    row.cells.push_back(read_cell(faults));
    if (at_ < text_.size() && text_[at_] == delimiter_) {
      ++at_;
      continue;
    }
    end_line();
    return row;
  }
}

std::string CsvRows::read_cell(Faults& faults) {
  const std::size_t begin = text_.find_first_not_of(" \t", at_);
  if (begin != std::string_view::npos && text_[begin] == '"') {
    at_ = begin;
    return read_quoted(faults);
  }
  std::size_t end = at_;
  while (end < text_.size() && text_[end] != delimiter_ && text_[end] != '\n') ++end;
  std::string_view cell = text_.substr(at_, end - at_);
  const bool line_ends = end == text_.size() || text_[end] == '\n';
  if (line_ends && !cell.empty() && cell.back() == '\r') cell.remove_suffix(1);
  at_ = end;
  return trimmed(cell);
}

std::string CsvRows::read_quoted(Faults& faults) {
  const int opened = line_;
  std::string cell;
  for (++at_; at_ < text_.size(); ++at_) {
    if (text_[at_] == '\n') ++line_;
    if (text_[at_] != '"') {
      cell += text_[at_];
    } else if (text_.substr(at_, 2) == "\"\"") {
      cell += '"';
      ++at_;
    } else {
      break;
    }
  }
  if (at_ == text_.size()) {
    fault(opened, "a quotation mark opens here and never closes", "", faults);
    return cell;
  }
  std::size_t end = ++at_;
  while (end < text_.size() && text_[end] != delimiter_ && text_[end] != '\n') ++end;
  if (text_.substr(at_, end - at_).find_first_not_of(" \t\r") != std::string_view::npos) {
    fault(line_, "text stands behind a closing quotation mark",
          "double the quotation marks inside a cell", faults);
  }
  at_ = end;
  return cell;
}

void CsvRows::end_line() {
  if (at_ >= text_.size()) return;
  ++at_;
  ++line_;
}

void CsvRows::fault(int line, std::string text, std::string hint, Faults& faults) const {
  faults.push_back({FaultCode::malformed, *file_, "line " + std::to_string(line), std::move(text),
                    std::move(hint)});
}

std::optional<CsvTable> parse_csv(std::string_view text, const std::string& file, Faults& faults) {
  Result<CsvRows> rows = CsvRows::of(text, file);
  if (!rows) {
    faults.insert(faults.end(), rows.error().begin(), rows.error().end());
    return std::nullopt;
  }
  const std::size_t faults_before = faults.size();
  std::optional<CsvTable> table;
  while (auto row = rows.value().next(faults)) {
    if (table) {
      table->rows.push_back(std::move(*row));
    } else {
      table = CsvTable{std::move(*row), {}};
    }
  }
  if (faults.size() > faults_before) return std::nullopt;
  if (!table) faults.push_back({FaultCode::malformed, file, "", "the file is empty", ""});
  return table;
}

std::string csv_place(int line, const std::string& column) {
  return "line " + std::to_string(line) + ", column " + without_controls(column);
}

std::optional<double> csv_number(const std::string& cell, const std::string& file,
                                 const std::string& place, Faults& faults) {
  if (const auto value = parse_number(trimmed(cell))) return value;
  const std::string found = "found " + quoted_text(cell, most_bytes_shown);
  if (trimmed(cell).empty()) {
    faults.push_back({FaultCode::missing_key, file, place, "the cell is empty", ""});
  } else if (has_decimal_comma(trimmed(cell))) {
    faults.push_back({FaultCode::wrong_type, file, place, found + ", a decimal comma",
                      "write decimals with a point: 12.5"});
  } else {
    faults.push_back(
        {FaultCode::wrong_type, file, place, found + ", which is no finite number", ""});
  }
  return std::nullopt;
}

}  // namespace staddle
