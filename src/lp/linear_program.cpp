// SPDX-License-Identifier: GPL-3.0-or-later
#include "lp/linear_program.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace staddle::lp {
namespace {

std::string wrong_bounds(double lower, double upper, const std::string& name) {
  if (std::isnan(lower) || lower == infinity) {
    return name + " has a lower bound of " + std::to_string(lower);
  }
  if (std::isnan(upper) || upper == -infinity) {
    return name + " has an upper bound of " + std::to_string(upper);
  }
  if (lower > upper) {
    return name + " has its lower bound " + std::to_string(lower) + " above its upper bound " +
           std::to_string(upper);
  }
  return "";
}

std::string wrong_entries(const LinearProgram& program) {
  std::vector<std::pair<std::size_t, std::size_t>> places;
  places.reserve(program.entries.size());
  for (const Entry& entry : program.entries) {
    const std::string name = "the entry at row " + std::to_string(entry.row) + " and column " +
                             std::to_string(entry.column);
    if (entry.row >= program.rows.size() || entry.column >= program.columns.size()) {
      return name + " lies outside the program";
    }
    if (!std::isfinite(entry.value)) return name + " is not finite";
    places.emplace_back(entry.row, entry.column);
  }
  std::sort(places.begin(), places.end());
  const auto twice = std::adjacent_find(places.begin(), places.end());
  if (twice == places.end()) return "";
  return "the entry at row " + std::to_string(twice->first) + " and column " +
         std::to_string(twice->second) + " is given twice";
}

}  // namespace

std::size_t LinearProgram::add_column(const Column& column, const std::vector<Term>& terms_by_row) {
  const std::size_t index = columns.size();
  columns.push_back(column);
  for (const Term& term : terms_by_row) entries.push_back({term.index, index, term.value});
  return index;
}

std::size_t LinearProgram::add_row(const Row& row, const std::vector<Term>& terms_by_column) {
  const std::size_t index = rows.size();
  rows.push_back(row);
  for (const Term& term : terms_by_column) entries.push_back({index, term.index, term.value});
  return index;
}

bool LinearProgram::has_whole_columns() const {
  return std::any_of(columns.begin(), columns.end(), [](const Column& c) { return c.whole; });
}

std::string broken_promise(const Column& column, const std::string& name) {
  if (!std::isfinite(column.cost)) return name + " has a cost that is not finite";
  return wrong_bounds(column.lower, column.upper, name);
}

std::string broken_promise(const Row& row, const std::string& name) {
  return wrong_bounds(row.lower, row.upper, name);
}

std::string broken_promise(const std::vector<Term>& terms, std::size_t count,
                           const std::string& name) {
  std::vector<std::size_t> indexes;
  for (const Term& term : terms) {
    const std::string at = name + ", term at " + std::to_string(term.index) + ", ";
    if (term.index >= count) return at + "lies outside the program";
    if (!std::isfinite(term.value)) return at + "is not finite";
    indexes.push_back(term.index);
  }
  std::sort(indexes.begin(), indexes.end());
  const auto twice = std::adjacent_find(indexes.begin(), indexes.end());
  if (twice == indexes.end()) return "";
  return name + ", term at " + std::to_string(*twice) + ", is given twice";
}

std::string broken_promise(const LinearProgram& program) {
  if (!std::isfinite(program.constant)) return "the constant is not finite";
  for (std::size_t j = 0; j < program.columns.size(); ++j) {
    std::string broken = broken_promise(program.columns[j], "column " + std::to_string(j));
    if (!broken.empty()) return broken;
  }
  for (std::size_t i = 0; i < program.rows.size(); ++i) {
    std::string broken = broken_promise(program.rows[i], "row " + std::to_string(i));
    if (!broken.empty()) return broken;
  }
  return wrong_entries(program);
}

}  // namespace staddle::lp
