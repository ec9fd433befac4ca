// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <cstdio>
#include <sstream>
#include <string>

#include "lp/linear_program.h"

// Linear programs as other solvers read them.
namespace staddle::lp {

// All digits of a number; infinity as most readers know it.
inline std::string exact(double x) {
  if (std::isinf(x)) return x > 0 ? "inf" : "-inf";
  char text[32];
  std::snprintf(text, sizeof text, "%.17g", x);
  return text;
}

// In the free MPS format, which minimises; the constant is left out.
inline std::string as_free_mps(const LinearProgram& program) {
  const double sign = program.direction == Direction::minimise ? 1.0 : -1.0;
  std::ostringstream rows, columns, right, ranges, bounds;
  for (std::size_t i = 0; i < program.rows.size(); ++i) {
    const Row& row = program.rows[i];
    const bool below = std::isfinite(row.lower);
    const bool above = std::isfinite(row.upper);
    const char kind = row.lower == row.upper ? 'E' : above ? 'L' : below ? 'G' : 'N';
    rows << ' ' << kind << " r" << i << '\n';
    const std::string name = " r" + std::to_string(i) + " ";
    if (below || above) right << " rhs" << name << exact(above ? row.upper : row.lower) << '\n';
    if (kind == 'L' && below) ranges << " rng" << name << exact(row.upper - row.lower) << '\n';
  }
  for (std::size_t j = 0; j < program.columns.size(); ++j) {
    const Column& column = program.columns[j];
    const std::string name = " c" + std::to_string(j) + " ";
    columns << name << "cost " << exact(sign * column.cost) << '\n';
    for (const Entry& entry : program.entries) {
      if (entry.column != j) continue;
      columns << name << 'r' << entry.row << ' ' << exact(entry.value) << '\n';
    }
    const bool below = std::isfinite(column.lower);
    bounds << (below ? " LO bnd" : " MI bnd") << name << (below ? exact(column.lower) : "") << '\n';
    if (std::isfinite(column.upper)) bounds << " UP bnd" << name << exact(column.upper) << '\n';
  }
  return "NAME random FREE\nROWS\n N cost\n" + rows.str() + "COLUMNS\n" + columns.str() + "RHS\n" +
         right.str() + "RANGES\n" + ranges.str() + "BOUNDS\n" + bounds.str() + "ENDATA\n";
}

}  // namespace staddle::lp
