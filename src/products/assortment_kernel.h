// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "growth/growth_kernel.h"
#include "products/table_columns.h"
#include "staddle/products/assortment.h"

namespace staddle {

// More products than any market sorts into; bounds the evaluator's arrays.
inline constexpr std::size_t max_products = 12;

// A stand at one age in the terms in which the yield equations speak. Valid only
// where `timber`.
struct StandTerms {
  int age_yr = 0;
  double log_tpa = 0;
  double log_basal_area = 0;
  double log_diameter = 0;         // quadratic mean, inches
  bool planted_untouched = false;  // bare land, never cut: a table reads its own columns
};

// The share of the total weight that stands in stems of at least a dbh, to a top:
//   M = Y exp(top_term X1 + dbh_term X2), X1 = Dq^-m2, X2 = N^m4 Dq^-m5
struct MerchantableTerm {
  double top_term = 0;  // m1 top^m2
  double dbh_term = 0;  // m3 dbh^m5
};

// Tons by product as plain numbers, for the evaluator's inner loop.
class AssortmentKernel {
 public:
  AssortmentKernel(const EquationSet& equations, const std::vector<ProductLimit>& products);
  explicit AssortmentKernel(const YieldTable& table);
  explicit AssortmentKernel(const TabledRegime& regime);

  const std::vector<std::string>& names() const { return names_; }
  std::size_t size() const { return names_.size(); }
  bool from_table() const { return from_table_; }

  // Writes the tons of each product to `tons`. REQUIRES: row.timber, or the
  // untouched stand of a table at one of its ages.
  void tons(const AgeRow& row, const StandTerms& stand, double* tons) const {
    if (from_table_ && stand.planted_untouched) {
      own_columns(stand.age_yr, tons);
      return;
    }
    if (!row.tons) {
      for (std::size_t i = 0; i < size(); ++i) tons[i] = 0.0;
      return;
    }
    const double log_total = row.log_tons_constant + row.log_tons_trees * stand.log_tpa +
                             row.log_tons_basal * stand.log_basal_area;
    if (from_table_) {
      table_tons(std::exp(log_total), stand, tons);
    } else {
      equation_tons(log_total, stand, tons);
    }
  }
  // Total green weight, all stems to the tip.
  double total_tons(const AgeRow& row, const StandTerms& stand) const {
    return row.tons ? std::exp(row.log_tons_constant + row.log_tons_trees * stand.log_tpa +
                               row.log_tons_basal * stand.log_basal_area)
                    : 0.0;
  }

  // For the certified bounds: tons_i = sum_j coefficient(i, j) M_j.
  const std::vector<MerchantableTerm>& terms() const { return terms_; }
  double coefficient(std::size_t product, std::size_t term) const {
    return coefficients_[product * terms_.size() + term];
  }
  // Of a user's yield table; absent for other growth.
  const std::optional<TableColumns>& table() const { return columns_; }
  double top_power() const { return top_power_; }    // m2
  double tree_power() const { return tree_power_; }  // m4
  double dbh_power() const { return dbh_power_; }    // m5

 private:
  void equation_tons(double log_total, const StandTerms& stand, double* tons) const;
  void table_tons(double total, const StandTerms& stand, double* tons) const;
  void own_columns(int age_yr, double* tons) const;

  std::vector<std::string> names_;
  bool from_table_ = false;

  std::vector<MerchantableTerm> terms_;
  std::vector<double> coefficients_;  // [product][term]
  double top_power_ = 0, tree_power_ = 0, dbh_power_ = 0;

  std::optional<TableColumns> columns_;
  // Of a tabled regime: [product][whole age], just before any cut.
  int first_tabled_age_ = 0;
  std::vector<std::vector<double>> tabled_tons_;
};

}  // namespace staddle
