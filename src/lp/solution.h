// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace staddle::lp {

enum class Status {
  optimal,            // passed the audit; |value - bound| <= relative_gap x |value|
  infeasible,         // no x satisfies all rows and bounds
  unbounded,          // the value has no limit (of a program with whole columns: without
                      // the wish for whole numbers)
  limit_reached,      // seconds, iterations or a stop request came first
  numerical_trouble,  // the solver gave up, or its answer failed the audit
};

// What the fields mean; a field not named is empty or 0:
//
//   status             fields
//   optimal            all; duals and reduced_costs only without whole columns
//   infeasible         message
//   unbounded          message
//   limit_reached      with whole columns and a whole point found: columns, rows,
//                      value, bound; else message alone
//   numerical_trouble  whatever failed the audit, audit_failure saying which part did;
//                      else message alone
//
// Signs, in both directions of optimisation: a dual is the change of the value per unit
// by which the row's binding bound is raised, a reduced cost the same of a column:
//   reduced_cost_j = cost_j - sum_i a_ij dual_i.
// So when minimising a row held at its lower bound has a dual >= 0, one held at its upper
// bound <= 0; when maximising the other way round; a row held by neither has 0.
struct Solution {
  Status status = Status::numerical_trouble;
  std::string message;                // one sentence on the status
  std::vector<double> columns;        // x
  std::vector<double> rows;           // sum_j a_ij x_j
  std::vector<double> duals;          // by row
  std::vector<double> reduced_costs;  // by column
  double value = 0.0;                 // constant + cost x
  double bound = 0.0;                 // no x has a better value
  std::string audit_failure;          // "" where the audit was passed or there was none
  int iterations = 0;                 // of the simplex method

  // Whether `columns` satisfies all rows and bounds.
  bool has_point() const {
    return status == Status::optimal || (status == Status::limit_reached && !columns.empty());
  }
};

}  // namespace staddle::lp
