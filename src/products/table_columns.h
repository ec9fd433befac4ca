// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
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

  // Of the table's own stand, at the starts of its quarter years: beyond them no age has
  // the diameter.
  double least_diameter_in() const { return least_diameter_; }
  double most_diameter_in() const { return most_diameter_; }

  // Over one part of a quarter year, upper bounds by Bernstein coefficients.
  struct PricedPart {
    double least_basal_area, most_basal_area;  // per tree, ft2
    double most_price;                         // of a ton of the table's mix of products
    bool at_an_end;  // stands beside the row with the smallest or largest diameter
  };
  // REQUIRES: a price, not below 0, for every product. Where the table has no tons its
  // last product counts.
  std::vector<PricedPart> priced_parts(const double* prices) const;

 private:
  // Over one quarter year, t from 0 to 1.
  struct Cubic {
    double c0 = 0, c1 = 0, c2 = 0, c3 = 0;
    double at(double t) const { return c0 + t * (c1 + t * (c2 + t * c3)); }
    double slope(double t) const { return c1 + t * (2 * c2 + t * 3 * c3); }
    // The cubic on [low, high] is a mean of these, weighted by what does not depend on it.
    std::array<double, 4> bernstein(double low, double high) const {
      const double third = (high - low) / 3.0;
      const double first = at(low), last = at(high);
      return {first, first + third * slope(low), last - third * slope(high), last};
    }
  };
  using Column = std::vector<Cubic>;  // by quarter; the last stands for the last age alone

  static Column column_of(const YieldTable& table, const std::vector<double>& values);
  double diameter(int quarter) const { return diameters_[static_cast<std::size_t>(quarter)]; }
  double age_between(int quarter, double diameter_in) const;
  double age_in_rising_diameters(int here, double diameter_in) const;
  double diameter_of_row(int row) const;
  double row_nearest_in_diameter(double diameter_in, int age_yr) const;

  int first_age_yr_;
  std::vector<int> row_ages_;
  std::vector<Column> tons_;
  Column trees_, basal_area_;
  std::vector<double> diameters_;  // at the start of each quarter, inches
  double least_diameter_, most_diameter_;
  bool rising_;  // each diameter above the one before: no diameter stands twice
};

}  // namespace staddle
