// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "lp/linear_program.h"
#include "lp/solution.h"

namespace staddle::lp {

// How well an answer fits the program's own data, whatever scaling or presolving the
// solver used. Each figure is the worst violation of its kind over what is allowed, so
// that 1 just passes. With s = 1 when minimising, -1 when maximising, y = s dual and
// d = s (cost - sum_i a_ij dual_i) computed afresh:
//
//   rows             sum_j a_ij x_j within the row's bounds, and as reported
//   bounds           x_j within the column's bounds
//   whole            x_j a whole number where asked
//   value            as reported
//   reduced_costs    as reported
//   dual_signs       y_i > 0 needs a lower bound of the row, y_i < 0 an upper one; the same
//                    of d_j and the column
//   complementarity  y_i > 0 times the row's distance from its lower bound, y_i < 0 from
//                    its upper one; the same of d_j and the column
//   gap              value - (sum of y_i and d_j times the bounds they name)
//
// Allowed is tolerance::lp_absolute + lp_relative x the largest magnitude that enters
// the figure: the terms of a sum, of a product the largest of each factor's terms.
// With whole columns there are no duals and the last four are 0. In either case the
// value must not be better than the bound (counted under `value`).
struct Audit {
  double rows = 0.0;
  double bounds = 0.0;
  double whole = 0.0;
  double value = 0.0;
  double reduced_costs = 0.0;
  double dual_signs = 0.0;
  double complementarity = 0.0;
  double gap = 0.0;

  bool passed() const;
  // The kind that fails by most, with its figure; "" where all pass.
  std::string failure() const;
};

// REQUIRES: broken_promise(program) is ""; the solution's vectors are as long as the
// program's, duals and reduced costs without whole columns only.
Audit audit(const LinearProgram& program, const Solution& solution);

}  // namespace staddle::lp
