// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/csv.h"

#include <algorithm>

#include "io/number_text.h"

namespace staddle {
namespace {

constexpr std::size_t most_bytes_shown = 40;

std::string trimmed(std::string_view text) {
  const std::size_t begin = text.find_first_not_of(" \t");
  if (begin == std::string_view::npos) return "";
  return std::string(text.substr(begin, text.find_last_not_of(" \t") - begin + 1));
}

class CsvParser {
 public:
  CsvParser(std::string_view text, const std::string& file, Faults& faults)
      : text_(text), file_(file), faults_(faults) {}

  std::vector<CsvRow> rows() {
    std::vector<CsvRow> rows;
    while (at_ < text_.size()) {
      if (text_[at_] == '#') {
        at_ = std::min(text_.find('\n', at_), text_.size());
        end_line();
        continue;
      }
      if (rows.empty()) choose_delimiter();
      CsvRow row = read_row();
      const bool blank = row.cells.size() == 1 && row.cells[0].empty();
      if (!blank) rows.push_back(std::move(row));
    }
    return rows;
  }

 private:
  void choose_delimiter() {
    const std::string_view line = text_.substr(at_, text_.find('\n', at_) - at_);
    const bool commas = line.find(',') != std::string_view::npos;
    const bool semicolons = line.find(';') != std::string_view::npos;
    if (semicolons && !commas) delimiter_ = ';';
  }

  CsvRow read_row() {
    CsvRow row{line_, {}};
    while (true) {
      row.cells.push_back(read_cell());
      if (at_ < text_.size() && text_[at_] == delimiter_) {
        ++at_;
        continue;
      }
      end_line();
      return row;
    }
  }

  std::string read_cell() {
    const std::size_t begin = text_.find_first_not_of(" \t", at_);
    if (begin != std::string_view::npos && text_[begin] == '"') {
      at_ = begin;
      return read_quoted();
    }
    std::size_t end = at_;
    while (end < text_.size() && text_[end] != delimiter_ && text_[end] != '\n') ++end;
    std::string_view cell = text_.substr(at_, end - at_);
    const bool line_ends = end == text_.size() || text_[end] == '\n';
    if (line_ends && !cell.empty() && cell.back() == '\r') cell.remove_suffix(1);
    at_ = end;
    return trimmed(cell);
  }

  std::string read_quoted() {
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
      fault(opened, "a quotation mark opens here and never closes");
      return cell;
    }
    std::size_t end = ++at_;
    while (end < text_.size() && text_[end] != delimiter_ && text_[end] != '\n') ++end;
    if (text_.substr(at_, end - at_).find_first_not_of(" \t\r") != std::string_view::npos) {
      fault(line_, "text stands behind a closing quotation mark",
            "double the quotation marks inside a cell");
    }
    at_ = end;
    return cell;
  }

  void end_line() {
    if (at_ >= text_.size()) return;
    ++at_;
    ++line_;
  }

  void fault(int line, std::string text, std::string hint = "") {
    faults_.push_back({FaultCode::malformed, file_, "line " + std::to_string(line), std::move(text),
                       std::move(hint)});
  }

  std::string_view text_;
  const std::string& file_;
  Faults& faults_;
  std::size_t at_ = 0;
  int line_ = 1;
  char delimiter_ = ',';
};

bool has_decimal_comma(const std::string& cell) {
  if (std::count(cell.begin(), cell.end(), ',') != 1) return false;
  std::string with_point = cell;
  std::replace(with_point.begin(), with_point.end(), ',', '.');
  return parse_number(with_point).has_value();
}

}  // namespace

std::optional<CsvTable> parse_csv(std::string_view text, const std::string& file, Faults& faults) {
  static constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
  if (text.substr(0, 3) == byte_order_mark) text.remove_prefix(3);
  if (text.find('\0') != std::string_view::npos || !is_utf8(text)) {
    faults.push_back({FaultCode::unreadable, file, "", "this is not a text in UTF-8",
                      "save the sheet as CSV in UTF-8"});
    return std::nullopt;
  }
  const std::size_t faults_before = faults.size();
  std::vector<CsvRow> rows = CsvParser(text, file, faults).rows();
  if (faults.size() > faults_before) return std::nullopt;
  if (rows.empty()) {
    faults.push_back({FaultCode::malformed, file, "", "the file is empty", ""});
    return std::nullopt;
  }
  CsvTable table{std::move(rows.front()), {}};
  rows.erase(rows.begin());
  table.rows = std::move(rows);
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
