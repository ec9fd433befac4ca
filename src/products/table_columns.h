// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "staddle/growth/yield_table.h"

namespace staddle {

// The tons by product of a user's yield table, read by age or by the stand's mean
// diameter. The columns are the table's interpolated ones; because they are cubics
// between rows, and rows stand at whole ages, each is kept as one cubic per quarter
// year, and "where does the table have this diameter" becomes the root of a cubic.
class TableColumns {
 public:
  explicit TableColumns(const YieldTable& table);

  // Writes the tons of each product at an age of the table.
  void tons_at(double age_yr, double* tons) const;

  // The age nearest `age_yr` at which the table's own stand has this quadratic mean
  // diameter (ties: the smaller), searched outward in quarter years; where none has it,
  // the row with the smallest or the largest diameter, whichever is nearer in diameter
  // (several: the one nearest `age_yr`).
  double age_of_diameter(double diameter_in, int age_yr) const;

 private:
  // Over one quarter year, t from 0 to 1.
  struct Cubic {
    double c0 = 0, c1 = 0, c2 = 0, c3 = 0;
    double at(double t) const { return c0 + t * (c1 + t * (c2 + t * c3)); }
    double slope(double t) const { return c1 + t * (2 * c2 + t * 3 * c3); }
  };
  using Column = std::vector<Cubic>;  // by quarter; the last stands for the last age alone

  static Column column_of(const YieldTable& table, const std::vector<double>& values);
  double diameter(int quarter) const { return diameters_[static_cast<std::size_t>(quarter)]; }
  double age_between(int quarter, double diameter_in) const;
  double row_nearest_in_diameter(double diameter_in, int age_yr) const;

  int first_age_yr_;
  std::vector<int> row_ages_;
  std::vector<Column> tons_;
  Column trees_, basal_area_;
  std::vector<double> diameters_;  // at the start of each quarter, inches
};

}  // namespace staddle
