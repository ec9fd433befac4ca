// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <cstddef>

#include "lp/linear_program.h"
#include "staddle/base/random.h"

namespace staddle::lp {

struct RandomShape {
  std::size_t rows = 6;
  std::size_t columns = 8;
  double density = 0.5;
  bool whole = false;  // every column whole, between bounds that are few steps apart
};

// Bounds and coefficients are whole numbers, so that corners coincide; some programs
// have no point, some no limit.
inline LinearProgram random_program(RandomStream& random, const RandomShape& shape) {
  const auto whole_number = [&random](int low, int high) {
    return low + static_cast<double>(random.next_below(static_cast<std::uint64_t>(high - low + 1)));
  };
  LinearProgram program;
  if (random.next_below(2) == 1) program.direction = Direction::maximise;
  for (std::size_t j = 0; j < shape.columns; ++j) {
    Column column;
    column.cost = whole_number(-9, 9);
    column.lower = random.next_below(4) == 0 ? whole_number(-3, 3) : 0.0;
    if (random.next_below(2) == 0) column.upper = column.lower + whole_number(0, 9);
    if (!shape.whole && random.next_below(10) == 0) column.lower = -infinity;
    if (shape.whole) column.upper = column.lower + whole_number(0, 3);
    column.whole = shape.whole;
    program.add_column(column);
  }
  for (std::size_t i = 0; i < shape.rows; ++i) {
    std::vector<Term> terms;
    for (std::size_t j = 0; j < shape.columns; ++j) {
      if (random.next_uniform() < shape.density) terms.push_back({j, whole_number(-2, 6)});
    }
    Row row{-infinity, whole_number(0, 30)};
    if (random.next_below(4) == 0) row.lower = row.upper - whole_number(0, 20);
    if (random.next_below(5) == 0) row = {whole_number(0, 8), infinity};
    program.add_row(row, terms);
  }
  return program;
}

}  // namespace staddle::lp
