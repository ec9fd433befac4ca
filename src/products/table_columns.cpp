// SPDX-License-Identifier: GPL-3.0-or-later
#include "products/table_columns.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "numeric/monotone_curve.h"
#include "staddle/base/tolerance.h"
#include "staddle/stand/stand_measures.h"
#include "stand/stand_constants.h"

namespace staddle {
namespace {

constexpr int quarters_per_year = 4;

}  // namespace

TableColumns::TableColumns(const YieldTable& table)
    : first_age_yr_(table.age_yr.front()),
      row_ages_(table.age_yr),
      trees_(column_of(table, table.tpa)),
      basal_area_(column_of(table, table.basal_area_ft2_ac)) {
  for (const auto& values : table.tons_ac) tons_.push_back(column_of(table, values));
  for (std::size_t quarter = 0; quarter < trees_.size(); ++quarter) {
    diameters_.push_back(quadratic_mean_diameter(trees_per_acre(trees_[quarter].c0),
                                                 square_feet_per_acre(basal_area_[quarter].c0))
                             .in(inches));
  }
}

TableColumns::Column TableColumns::column_of(const YieldTable& table,
                                             const std::vector<double>& values) {
  std::vector<numeric::MonotoneCurve::Point> points;
  for (std::size_t i = 0; i < values.size(); ++i) {
    points.push_back({static_cast<double>(table.age_yr[i]), values[i]});
  }
  const double first = points.front().x;
  const int quarters = static_cast<int>(points.back().x - first) * quarters_per_year;
  const numeric::MonotoneCurve curve(std::move(points));
  Column column;
  for (int quarter = 0; quarter < quarters; ++quarter) {
    // The cubic through four points of a cubic is that cubic.
    const auto sample = [&](double t) {
      return curve.at(first + (quarter + t) / quarters_per_year);
    };
    const double y0 = sample(0.0), y1 = sample(1.0 / 3.0), y2 = sample(2.0 / 3.0), y3 = sample(1.0);
    column.push_back({y0, (-11.0 * y0 + 18.0 * y1 - 9.0 * y2 + 2.0 * y3) / 2.0,
                      (18.0 * y0 - 45.0 * y1 + 36.0 * y2 - 9.0 * y3) / 2.0,
                      (-9.0 * y0 + 27.0 * y1 - 27.0 * y2 + 9.0 * y3) / 2.0});
  }
  column.push_back({curve.at(first + static_cast<double>(quarters) / quarters_per_year)});
  return column;
}

void TableColumns::tons_at(double age_yr, double* tons) const {
  const double position = (age_yr - first_age_yr_) * quarters_per_year;
  const int last = static_cast<int>(trees_.size()) - 1;
  const int quarter = std::clamp(static_cast<int>(position), 0, last);
  const double t = position - quarter;
  // Rounding alone could make a column that touches zero negative.
  for (std::size_t i = 0; i < tons_.size(); ++i) {
    tons[i] = std::max(0.0, tons_[i][static_cast<std::size_t>(quarter)].at(t));
  }
}

double TableColumns::age_of_diameter(double diameter_in, int age_yr) const {
  const int last = static_cast<int>(diameters_.size()) - 1;
  const int here = (age_yr - first_age_yr_) * quarters_per_year;
  if (diameter(here) == diameter_in) return age_yr;
  // A step crosses where the sign changes over it or its far end hits the diameter.
  const auto crosses = [&](int near, int far) {
    return diameter(far) == diameter_in ||
           (diameter(far) < diameter_in) != (diameter(near) < diameter_in);
  };
  for (int step = 1; here - step >= 0 || here + step <= last; ++step) {
    const int left = here - step;
    const int right = here + step;
    const bool crosses_left = left >= 0 && crosses(left + 1, left);
    const bool crosses_right = right <= last && crosses(right - 1, right);
    if (!crosses_left && !crosses_right) continue;
    const double younger = crosses_left ? age_between(left, diameter_in) : -HUGE_VAL;
    const double older = crosses_right ? age_between(right - 1, diameter_in) : HUGE_VAL;
    return age_yr - younger <= older - age_yr ? younger : older;
  }
  return row_nearest_in_diameter(diameter_in, age_yr);
}

// The diameter is d where basal area - k d^2 trees = 0: a cubic over the quarter. Newton's
// steps, and halving wherever one would leave the bracket.
double TableColumns::age_between(int quarter, double diameter_in) const {
  constexpr int most_steps = 100;
  const Cubic& area = basal_area_[static_cast<std::size_t>(quarter)];
  const Cubic& trees = trees_[static_cast<std::size_t>(quarter)];
  const double share = basal_area_factor * diameter_in * diameter_in;
  const auto excess = [&](double t) { return area.at(t) - share * trees.at(t); };
  double low = 0.0, high = 1.0;
  const bool rising = excess(high) > excess(low);
  double t = 0.5;
  for (int i = 0; i < most_steps && high - low > tolerance::root; ++i) {
    const double value = excess(t);
    if (value == 0.0) break;
    ((value < 0.0) == rising ? low : high) = t;
    const double step = value / (area.slope(t) - share * trees.slope(t));
    const double next = t - step;
    if (std::fabs(step) <= tolerance::root && next >= low && next <= high) {
      t = next;
      break;
    }
    t = next > low && next < high ? next : 0.5 * (low + high);
  }
  return first_age_yr_ + (quarter + t) / quarters_per_year;
}

double TableColumns::row_nearest_in_diameter(double diameter_in, int age_yr) const {
  const auto of_row = [&](int row) { return diameter((row - first_age_yr_) * quarters_per_year); };
  double smallest = HUGE_VAL;
  double largest = 0.0;
  for (const int row : row_ages_) {
    smallest = std::min(smallest, of_row(row));
    largest = std::max(largest, of_row(row));
  }
  const double wanted =
      std::fabs(diameter_in - smallest) <= std::fabs(diameter_in - largest) ? smallest : largest;
  int nearest = row_ages_.front();
  int distance = nearest + age_yr;
  for (const int row : row_ages_) {
    if (of_row(row) != wanted || std::abs(row - age_yr) >= distance) continue;
    distance = std::abs(row - age_yr);
    nearest = row;
  }
  return nearest;
}

}  // namespace staddle
