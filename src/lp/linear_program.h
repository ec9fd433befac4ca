// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <limits>
#include <string>
#include <vector>

namespace staddle::lp {

inline constexpr double infinity = std::numeric_limits<double>::infinity();

enum class Direction { minimise, maximise };

// A variable x_j.
struct Column {
  double cost = 0.0;
  double lower = 0.0;       // may be -infinity
  double upper = infinity;  // may be infinity
  bool whole = false;       // a whole number
};

// A linear form sum_j a_ij x_j between two bounds.
struct Row {
  double lower = -infinity;
  double upper = infinity;
};

struct Entry {
  std::size_t row = 0;
  std::size_t column = 0;
  double value = 0.0;  // a_ij; entries not listed are 0
};

// A coefficient in a row, where the index is a column's, or the other way round.
struct Term {
  std::size_t index = 0;
  double value = 0.0;
};

//   minimise or maximise   constant + sum_j cost_j x_j
//   subject to             row_i.lower <= sum_j a_ij x_j <= row_i.upper
//                          column_j.lower <= x_j <= column_j.upper
//                          x_j whole where column_j.whole
//
// Worked example (manual of the GNU Linear Programming Kit, its first example):
//
//   LinearProgram program{Direction::maximise};
//   program.add_column({.cost = 10});
//   program.add_column({.cost = 6});
//   program.add_column({.cost = 4});
//   program.add_row({.upper = 100}, {{0, 1}, {1, 1}, {2, 1}});
//   program.add_row({.upper = 600}, {{0, 10}, {1, 4}, {2, 5}});
//   program.add_row({.upper = 300}, {{0, 2}, {1, 2}, {2, 6}});
//
//   value 733.333 at (33.333, 66.667, 0), duals (3.3333, 0.6667, 0).
struct LinearProgram {
  Direction direction = Direction::minimise;
  std::vector<Column> columns = {};
  std::vector<Row> rows = {};
  std::vector<Entry> entries = {};  // in any order, no place twice
  double constant = 0.0;

  // Each returns the index of what was added. Terms name what is there already.
  std::size_t add_column(const Column& column, const std::vector<Term>& terms_by_row = {});
  std::size_t add_row(const Row& row, const std::vector<Term>& terms_by_column = {});

  bool has_whole_columns() const;
};

// What keeps a program from being solved, naming the row, column or entry, or "" where
// nothing does: a number that is not finite (bounds may be infinite, each to its own
// side), a lower bound above the upper one, a place out of range or given twice.
// The solver REQUIRES that it is "".
std::string broken_promise(const LinearProgram& program);
std::string broken_promise(const Column& column, const std::string& name);
std::string broken_promise(const Row& row, const std::string& name);
// Of the terms of one row or column: `count` is the number of indexes there are.
std::string broken_promise(const std::vector<Term>& terms, std::size_t count,
                           const std::string& name);

}  // namespace staddle::lp
