// SPDX-License-Identifier: GPL-3.0-or-later
#include "products/table_columns.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <functional>
#include <limits>

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
  const auto [least, most] = std::minmax_element(diameters_.begin(), diameters_.end());
  least_diameter_ = *least;
  most_diameter_ = *most;
  rising_ = std::adjacent_find(diameters_.begin(), diameters_.end(), std::greater_equal<>()) ==
            diameters_.end();
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

std::vector<TableColumns::PricedPart> TableColumns::priced_parts(const double* prices) const {
  constexpr int parts = 4;  // of a quarter year
  const double highest_price = *std::max_element(prices, prices + tons_.size());
  double smallest = HUGE_VAL, largest = 0.0;
  for (const int row : row_ages_) {
    smallest = std::min(smallest, diameter_of_row(row));
    largest = std::max(largest, diameter_of_row(row));
  }
  const auto is_end = [&](std::size_t quarter) {
    const double d = diameters_[quarter];
    return d <= smallest || d >= largest;
  };
  std::vector<PricedPart> found;
  for (std::size_t quarter = 0; quarter < trees_.size(); ++quarter) {
    const bool last_age = quarter + 1 == trees_.size();
    for (int part = 0; part < (last_age ? 1 : parts); ++part) {
      const double low = static_cast<double>(part) / parts;
      const double high = last_age ? low : static_cast<double>(part + 1) / parts;
      const auto area = basal_area_[quarter].bernstein(low, high);
      const auto trees = trees_[quarter].bernstein(low, high);
      std::array<double, 4> tons{}, worth{};
      for (std::size_t i = 0; i < tons_.size(); ++i) {
        const auto of_product = tons_[i][quarter].bernstein(low, high);
        for (std::size_t j = 0; j < tons.size(); ++j) {
          tons[j] += of_product[j];
          worth[j] += prices[i] * of_product[j];
        }
      }
      PricedPart priced;
      const auto [least_area, most_area] = std::minmax_element(area.begin(), area.end());
      const auto [least_trees, most_trees] = std::minmax_element(trees.begin(), trees.end());
      priced.least_basal_area = std::max(0.0, *least_area / *most_trees);
      priced.most_basal_area = *least_trees > 0.0 ? *most_area / *least_trees : HUGE_VAL;
      // A quotient of such means is no higher than the highest quotient, denominators above 0.
      priced.most_price = 0.0;
      for (std::size_t j = 0; j < tons.size(); ++j) {
        priced.most_price =
            std::max(priced.most_price, tons[j] > 0.0 ? worth[j] / tons[j] : highest_price);
      }
      priced.most_price = std::min(priced.most_price, highest_price);
      priced.at_an_end = is_end(quarter) || (!last_age && is_end(quarter + 1));
      found.push_back(priced);
    }
  }
  return found;
}

double TableColumns::age_of_diameter(double diameter_in, int age_yr) const {
  const int last = static_cast<int>(diameters_.size()) - 1;
  const int here = (age_yr - first_age_yr_) * quarters_per_year;
  if (diameter(here) == diameter_in) return age_yr;
  if (diameter_in < least_diameter_ || diameter_in > most_diameter_) {
    return row_nearest_in_diameter(diameter_in, age_yr);
  }
  if (rising_) return age_in_rising_diameters(here, diameter_in);
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

// What the search outward finds, where there is one such age only.
double TableColumns::age_in_rising_diameters(int here, double diameter_in) const {
  const auto begin = diameters_.begin(), at = begin + here;
  const auto quarter = diameter_in < *at
                           ? std::upper_bound(begin, at, diameter_in) - begin
                           : std::lower_bound(at, diameters_.end(), diameter_in) - begin;
  return age_between(static_cast<int>(quarter) - 1, diameter_in);
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

double TableColumns::diameter_of_row(int row) const {
  return diameter((row - first_age_yr_) * quarters_per_year);
}

double TableColumns::row_nearest_in_diameter(double diameter_in, int age_yr) const {
  if (rising_) {
    const bool young =
        std::fabs(diameter_in - least_diameter_) <= std::fabs(diameter_in - most_diameter_);
    return young ? row_ages_.front() : row_ages_.back();
  }
  double smallest = HUGE_VAL;
  double largest = 0.0;
  for (const int row : row_ages_) {
    smallest = std::min(smallest, diameter_of_row(row));
    largest = std::max(largest, diameter_of_row(row));
  }
  const double wanted =
      std::fabs(diameter_in - smallest) <= std::fabs(diameter_in - largest) ? smallest : largest;
  int nearest = row_ages_.front();
  int distance = std::numeric_limits<int>::max();
  for (const int row : row_ages_) {
    if (diameter_of_row(row) != wanted || std::abs(row - age_yr) >= distance) continue;
    distance = std::abs(row - age_yr);
    nearest = row;
  }
  return nearest;
}

}  // namespace staddle
