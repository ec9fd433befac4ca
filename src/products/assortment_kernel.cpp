// SPDX-License-Identifier: GPL-3.0-or-later
#include "products/assortment_kernel.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <utility>

#include "growth/tabled_columns.h"
#include "numeric/roots.h"
#include "staddle/base/contract.h"
#include "staddle/stand/stand_measures.h"

namespace staddle {

AssortmentKernel::AssortmentKernel(const EquationSet& equations,
                                   const std::vector<ProductLimit>& products) {
  require(!products.empty() && products.size() <= max_products,
          "an assortment has between 1 and max_products products");
  const auto& m = equations.merchantable;
  top_power_ = m[1];
  tree_power_ = m[3];
  dbh_power_ = m[4];
  const auto add_term = [&](double top_in, double dbh_in) {
    terms_.push_back({m[0] * std::pow(top_in, m[1]), m[2] * std::pow(dbh_in, m[4])});
    return terms_.size() - 1;
  };
  // Each class's own tons as a row over the terms; the smallest takes the rest.
  const std::size_t count = products.size();
  const std::size_t most_terms = 2 * count;
  std::vector<std::vector<double>> own(count, std::vector<double>(most_terms, 0.0));
  for (std::size_t i = 0; i < count; ++i) {
    names_.push_back(products[i].name);
    own[i][add_term(products[i].top.in(inches), products[i].min_dbh.in(inches))] = 1.0;
    const bool smallest = i + 1 == count;
    if (smallest) {
      for (std::size_t larger = 0; larger < i; ++larger) {
        for (std::size_t j = 0; j < most_terms; ++j) own[i][j] -= own[larger][j];
      }
    } else if (i > 0) {
      own[i][add_term(products[i].top.in(inches), products[i - 1].min_dbh.in(inches))] = -1.0;
    }
  }
  coefficients_.assign(count * terms_.size(), 0.0);
  for (std::size_t i = 0; i < count; ++i) {
    const bool smallest = i + 1 == count;
    const double kept = smallest ? 1.0 : products[i].grade_fraction;
    const double fallen = i == 0 ? 0.0 : 1.0 - products[i - 1].grade_fraction;
    for (std::size_t j = 0; j < terms_.size(); ++j) {
      coefficients_[i * terms_.size() + j] =
          kept * own[i][j] + (i == 0 ? 0.0 : fallen * own[i - 1][j]);
    }
  }
}

void AssortmentKernel::equation_tons(double log_total, const StandTerms& stand,
                                     double* tons) const {
  const double top_factor = std::exp(-top_power_ * stand.log_diameter);
  const double dbh_factor =
      std::exp(tree_power_ * stand.log_tpa - dbh_power_ * stand.log_diameter);
  const std::size_t products = size();
  for (std::size_t i = 0; i < products; ++i) tons[i] = 0.0;
  for (std::size_t j = 0; j < terms_.size(); ++j) {
    const double merchantable =
        std::exp(log_total + terms_[j].top_term * top_factor + terms_[j].dbh_term * dbh_factor);
    for (std::size_t i = 0; i < products; ++i) {
      tons[i] += coefficients_[i * terms_.size() + j] * merchantable;
    }
  }
}

AssortmentKernel::AssortmentKernel(const YieldTable& table)
    : names_(table.products), from_table_(true), row_ages_(table.age_yr) {
  require(!names_.empty() && names_.size() <= max_products,
          "an assortment has between 1 and max_products products");
  const auto curve = [&table](const std::vector<double>& column) {
    std::vector<numeric::MonotoneCurve::Point> points;
    for (std::size_t i = 0; i < column.size(); ++i) {
      points.push_back({static_cast<double>(table.age_yr[i]), column[i]});
    }
    return numeric::MonotoneCurve(std::move(points));
  };
  for (const auto& column : table.tons_ac) columns_.push_back(curve(column));
  measures_.push_back(curve(table.tpa));
  measures_.push_back(curve(table.basal_area_ft2_ac));
}

double AssortmentKernel::table_diameter(double age_yr) const {
  return quadratic_mean_diameter(trees_per_acre(measures_[0].at(age_yr)),
                                 square_feet_per_acre(measures_[1].at(age_yr)))
      .in(inches);
}

// The age nearest `age_yr` at which the table's own stand has this diameter (ties: the
// smaller), searched outward in quarter years; where none has it, the row with the
// smallest or the largest diameter, whichever is nearer in diameter (several: the one
// nearest `age_yr`).
double AssortmentKernel::age_of_diameter(double diameter_in, int age_yr) const {
  constexpr double step_yr = 0.25;
  const double first = row_ages_.front();
  const double last = row_ages_.back();
  const auto excess = [&](double at) { return table_diameter(at) - diameter_in; };
  const auto root_between = [&](double low, double high) {
    return numeric::find_root(excess, {low, high}).x;
  };
  const double here = excess(age_yr);
  if (here == 0.0) return age_yr;
  double below = here;
  double above = here;
  const int steps = static_cast<int>(std::ceil((last - first) / step_yr));
  for (int i = 1; i <= steps; ++i) {
    const double low = std::max(first, age_yr - i * step_yr);
    const double high = std::min(last, age_yr + i * step_yr);
    const double low_excess = excess(low);
    const double high_excess = excess(high);
    const bool crosses_below = (low_excess <= 0.0) != (below <= 0.0) || low_excess == 0.0;
    const bool crosses_above = (high_excess <= 0.0) != (above <= 0.0) || high_excess == 0.0;
    if (crosses_below || crosses_above) {
      const double left =
          crosses_below ? root_between(low, std::max(first, age_yr - (i - 1) * step_yr)) : -1e300;
      const double right =
          crosses_above ? root_between(std::min(last, age_yr + (i - 1) * step_yr), high) : 1e300;
      return age_yr - left <= right - age_yr ? left : right;
    }
    below = low_excess;
    above = high_excess;
  }
  double nearest_age = first;
  double smallest = table_diameter(first);
  double largest = smallest;
  for (const int row : row_ages_) {
    smallest = std::min(smallest, table_diameter(row));
    largest = std::max(largest, table_diameter(row));
  }
  const double wanted =
      std::fabs(diameter_in - smallest) <= std::fabs(diameter_in - largest) ? smallest : largest;
  double nearest = std::numeric_limits<double>::infinity();
  for (const int row : row_ages_) {
    if (table_diameter(row) == wanted && std::fabs(row - age_yr) < nearest) {
      nearest = std::fabs(row - age_yr);
      nearest_age = row;
    }
  }
  return nearest_age;
}

AssortmentKernel::AssortmentKernel(const TabledRegime& regime)
    : names_(regime.table.products), from_table_(true) {
  require(!names_.empty() && names_.size() <= max_products,
          "an assortment has between 1 and max_products products");
  TabledAges ages = ages_before_cuts(regime);
  first_tabled_age_ = ages.first_age_yr;
  tabled_tons_ = std::move(ages.tons_ac);
}

void AssortmentKernel::own_columns(double age_yr, double* tons) const {
  if (!tabled_tons_.empty()) {
    const auto row = static_cast<std::size_t>(static_cast<int>(age_yr) - first_tabled_age_);
    for (std::size_t i = 0; i < size(); ++i) tons[i] = tabled_tons_[i][row];
    return;
  }
  for (std::size_t i = 0; i < size(); ++i) tons[i] = columns_[i].at(age_yr);
}

void AssortmentKernel::table_tons(double total, const StandTerms& stand, double* tons) const {
  own_columns(age_of_diameter(std::exp(stand.log_diameter), stand.age_yr), tons);
  const double sum = std::accumulate(tons, tons + size(), 0.0);
  if (sum <= 0.0) {
    std::fill(tons, tons + size(), 0.0);
    tons[size() - 1] = total;
    return;
  }
  for (std::size_t i = 0; i < size(); ++i) tons[i] *= total / sum;
}

}  // namespace staddle
