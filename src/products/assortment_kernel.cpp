// SPDX-License-Identifier: GPL-3.0-or-later
#include "products/assortment_kernel.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "growth/tabled_columns.h"
#include "staddle/base/contract.h"

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
  const double dbh_factor = std::exp(tree_power_ * stand.log_tpa - dbh_power_ * stand.log_diameter);
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
    : names_(table.products), from_table_(true), columns_(table) {
  require(!names_.empty() && names_.size() <= max_products,
          "an assortment has between 1 and max_products products");
}

AssortmentKernel::AssortmentKernel(const TabledRegime& regime)
    : names_(regime.table.products), from_table_(true) {
  require(!names_.empty() && names_.size() <= max_products,
          "an assortment has between 1 and max_products products");
  TabledAges ages = ages_before_cuts(regime);
  first_tabled_age_ = ages.first_age_yr;
  tabled_tons_ = std::move(ages.tons_ac);
}

void AssortmentKernel::own_columns(int age_yr, double* tons) const {
  if (columns_) {
    columns_->tons_at(age_yr, tons);
    return;
  }
  const auto row = static_cast<std::size_t>(age_yr - first_tabled_age_);
  for (std::size_t i = 0; i < size(); ++i) tons[i] = tabled_tons_[i][row];
}

void AssortmentKernel::table_tons(double total, const StandTerms& stand, double* tons) const {
  require(columns_.has_value(), "a tabled regime holds no stand but its own");
  columns_->tons_at(columns_->age_of_diameter(std::exp(stand.log_diameter), stand.age_yr), tons);
  const double sum = std::accumulate(tons, tons + size(), 0.0);
  if (sum <= 0.0) {
    std::fill(tons, tons + size(), 0.0);
    tons[size() - 1] = total;
    return;
  }
  for (std::size_t i = 0; i < size(); ++i) tons[i] *= total / sum;
}

}  // namespace staddle
