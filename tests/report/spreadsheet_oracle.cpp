// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/spreadsheet_oracle.h"

#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <stdexcept>
#include <utility>

#include "support/files.h"
#include "support/near.h"
#include "support/program.h"

namespace staddle::support {
namespace {

const char* const program = "ssconvert";  // of gnumeric

// Quoted fields as RFC 4180 has them, as the program writes.
CellTexts cells_of(const std::string& csv) {
  CellTexts rows;
  std::vector<std::string> row;
  std::string field;
  bool quoted = false;
  for (std::size_t i = 0; i < csv.size(); ++i) {
    const char c = csv[i];
    if (quoted) {
      if (c != '"') {
        field += c;
      } else if (i + 1 < csv.size() && csv[i + 1] == '"') {
        field += csv[++i];
      } else {
        quoted = false;
      }
    } else if (c == '"') {
      quoted = true;
    } else if (c == ',' || c == '\n') {
      row.push_back(std::exchange(field, {}));
      if (c == '\n') rows.push_back(std::exchange(row, {}));
    } else {
      field += c;
    }
  }
  if (!field.empty() || !row.empty()) {
    row.push_back(field);
    rows.push_back(row);
  }
  return rows;
}

OpenedWorkbook opened(const std::string& path, std::vector<std::string> options) {
  const TemporaryDirectory directory;
  for (const char* option :
       {"-S", "-T", "Gnumeric_stf:stf_assistant", "-O", "format=raw separator=, eol=unix"}) {
    options.push_back(option);
  }
  options.push_back(path);
  options.push_back(directory.path("%s.csv"));
  const Run run = run_program(program, options);
  INFO(run.err);
  REQUIRE(run.exit_code == 0);
  OpenedWorkbook book;
  for (const auto& file : std::filesystem::directory_iterator(directory.path())) {
    book.sheets[file.path().stem().string()] = cells_of(read_file(file.path().string()));
  }
  return book;
}

}  // namespace

bool spreadsheet_program_is_there() { return program_exists(program); }

const std::string& OpenedWorkbook::at(const std::string& sheet, std::size_t row,
                                      std::size_t column) const {
  return sheets.at(sheet).at(row).at(column);
}

double OpenedWorkbook::number(const std::string& sheet, std::size_t row, std::size_t column) const {
  const std::string& text = at(sheet, row, column);
  CAPTURE(sheet, row, column, text);
  std::size_t end = 0;
  const double value = std::stod(text, &end);
  REQUIRE(end == text.size());
  return value;
}

std::size_t OpenedWorkbook::row_of(const std::string& sheet, const std::string& first_cell) const {
  const CellTexts& rows = sheets.at(sheet);
  for (std::size_t row = 0; row < rows.size(); ++row) {
    if (!rows[row].empty() && rows[row].front() == first_cell) return row;
  }
  throw std::runtime_error("no row " + first_cell + " in " + sheet);
}

OpenedWorkbook open_workbook(const std::string& path) { return opened(path, {}); }

OpenedWorkbook recalculate_workbook(const std::string& path) { return opened(path, {"--recalc"}); }

std::size_t numbers_computed_as_written(const std::string& path) {
  const OpenedWorkbook kept = open_workbook(path);
  const OpenedWorkbook computed = recalculate_workbook(path);
  std::size_t numbers = 0;
  for (const auto& [name, rows] : kept.sheets) {
    const CellTexts& again = computed.sheets.at(name);
    REQUIRE(again.size() == rows.size());
    for (std::size_t row = 0; row < rows.size(); ++row) {
      REQUIRE(again[row].size() == rows[row].size());
      for (std::size_t column = 0; column < rows[row].size(); ++column) {
        CAPTURE(name, row, column);
        const std::string& text = rows[row][column];
        char* end = nullptr;
        const double value = std::strtod(text.c_str(), &end);
        if (text.empty() || *end != '\0') {
          REQUIRE(again[row][column] == text);
          continue;
        }
        ++numbers;
        REQUIRE(std::stod(again[row][column]) ==
                Approx(value).epsilon(two_methods).margin(two_methods));
      }
    }
  }
  return numbers;
}

}  // namespace staddle::support
