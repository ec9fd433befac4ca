// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/search_tables.h"

#include <algorithm>
#include <cmath>

#include "stand/stand_constants.h"
#include "staddle/base/tolerance.h"

namespace staddle {

SearchTables::SearchTables(const CaseKernel& kernel, const LatticeRules& rules)
    : first_yr(std::max(kernel.present_yr(), 1)),
      last_yr(std::max(rules.final_to(), first_yr)),
      perils(kernel.perils()),
      storm_recovery_yr(kernel.recovery_yr()) {
  // A peril that never strikes would only cost time.
  std::erase_if(perils, [](const PerilKernel& peril) { return peril.annual_probability == 0.0; });
  take_growth(kernel);
  take_money(kernel);
  take_removals(kernel, rules);
}

void SearchTables::take_growth(const CaseKernel& kernel) {
  const GrowthKernel& growth = kernel.growth();
  const AssortmentKernel& assortment = kernel.assortment();
  survival_floor = growth.survival_floor_tpa();
  survival_exponent = growth.survival_exponent();
  recovery_per_yr = growth.recovery_per_yr();
  crown_limited = kernel.crown_limited();
  crown_offset = kernel.crown_offset();
  const std::size_t size = static_cast<std::size_t>(last_yr) + 1 + lane_padding;
  for (auto* array : {&survival, &log_basal_constant, &log_basal_n, &tons_constant, &tons_n,
                      &tons_w, &tons_trees, &tons_basal, &diameter_constant, &diameter_n,
                      &height_ft, &crown_slope}) {
    array->assign(size, 0.0);
  }
  for (std::size_t t = 0; t < size; ++t) {
    // Ages before the first and after the last are never read for an answer.
    const AgeRow& row = growth.row(std::clamp(static_cast<int>(t), first_yr, last_yr));
    survival[t] = row.survival_term;
    log_basal_constant[t] = row.log_basal_constant;
    log_basal_n[t] = row.log_basal_exponent;
    tons_trees[t] = row.log_tons_trees;
    tons_basal[t] = row.log_tons_basal;
    tons_constant[t] = row.log_tons_constant + row.log_tons_basal * row.log_basal_constant;
    tons_n[t] = row.log_tons_trees + row.log_tons_basal * row.log_basal_exponent;
    tons_w[t] = row.log_tons_basal;
    diameter_constant[t] = 0.5 * (row.log_basal_constant - std::log(basal_area_factor));
    diameter_n[t] = 0.5 * (row.log_basal_exponent - 1.0);
    height_ft[t] = row.height_ft;
    crown_slope[t] = row.crown_slope / row.height_ft;
  }
  terms = assortment.terms().size();
  products = assortment.size();
  top_power = assortment.top_power();
  tree_power = assortment.tree_power();
  dbh_power = assortment.dbh_power();
  for (const MerchantableTerm& term : assortment.terms()) {
    top_term.push_back(term.top_term);
    dbh_term.push_back(term.dbh_term);
  }
  for (std::size_t i = 0; i < products; ++i) {
    for (std::size_t j = 0; j < terms; ++j) coefficient.push_back(assortment.coefficient(i, j));
  }
}

void SearchTables::take_money(const CaseKernel& kernel) {
  standing = kernel.standing();
  land_value = kernel.land_value();
  growth_multiplier = kernel.growth_multiplier();
  has_offsets = standing && growth_multiplier != 1.0;
  net_share = kernel.net_share();
  thinning_sale_cost = kernel.thinning_sale_cost();
  final_sale_cost = kernel.final_sale_cost();
  delay_money = kernel.delay_money();
  delay_discount = kernel.land_discount(kernel.present_yr());
  double highest_price = 0.0;
  for (std::size_t i = 0; i < products; ++i) {
    final_price.push_back(kernel.final_price(i));
    thinning_price.push_back(kernel.thinning_price(i));
    highest_price = std::max({highest_price, final_price[i], thinning_price[i]});
  }
  final_weight.assign(terms, 0.0);
  for (std::size_t j = 0; j < terms; ++j) {
    for (std::size_t i = 0; i < products; ++i) {
      final_weight[j] += final_price[i] * coefficient[i * terms + j];
    }
    final_weight[j] *= growth_multiplier;
  }
  const std::size_t size = survival.size();
  for (auto* array : {&discount, &land_discount, &other_timber, &yearly_before, &yearly_after,
                      &practices, &summed_before, &summed_after}) {
    array->assign(size, 0.0);
  }
  land_factor.assign(size, 1.0);
  double total = std::fabs(kernel.start().money) + std::fabs(delay_money);
  for (int at = kernel.present_yr(); at <= last_yr; ++at) {
    const auto t = static_cast<std::size_t>(at);
    discount[t] = kernel.discount(at);
    land_discount[t] = kernel.land_discount(at);
    other_timber[t] = kernel.other_timber_value(at);
    if (!standing) land_factor[t] = 1.0 / (1.0 - land_discount[t]);
    if (at == kernel.present_yr()) continue;
    yearly_before[t] = kernel.yearly_money(at, false);
    yearly_after[t] = kernel.yearly_money(at, true);
    practices[t] = kernel.practice_money(at);
    summed_before[t] = summed_before[t - 1] + discount[t] * (yearly_before[t] + practices[t]);
    summed_after[t] = summed_after[t - 1] + discount[t] * (yearly_after[t] + practices[t]);
    total += discount[t] * (std::fabs(yearly_before[t]) + std::fabs(yearly_after[t]) +
                            std::fabs(practices[t]));
  }
  // A thousand tons stand on no acre; 4e-13 is some two thousand roundings.
  constexpr double more_than_any_tons = 1000.0;
  total += highest_price * more_than_any_tons * growth_multiplier + std::fabs(land_value) +
           other_timber[static_cast<std::size_t>(last_yr)];
  const double widest = standing ? 1.0 : land_factor[static_cast<std::size_t>(first_yr)];
  rounding = 4e-13 * total * widest;
}

void SearchTables::take_removals(const CaseKernel& kernel, const LatticeRules& rules) {
  const std::vector<double>& fractions = rules.removals();
  for (int entry = 0; entry < std::max(1, rules.max_thinnings()); ++entry) {
    const double q = kernel.cut_diameter_ratio(entry);
    RemovalFactors factors;
    for (const double removal : fractions) {
      const bool leaves = rules.leaves_trees(removal, entry);
      factors.leaves_trees.push_back(leaves);
      factors.log_trees.push_back(leaves ? std::log1p(-removal / (q * q)) : 0.0);
      factors.log_basal.push_back(leaves ? std::log1p(-removal) : 0.0);
      const double log_diameter = 0.5 * (factors.log_basal.back() - factors.log_trees.back());
      factors.top_factor.push_back(std::exp(-top_power * log_diameter));
      factors.dbh_factor.push_back(
          std::exp(tree_power * factors.log_trees.back() - dbh_power * log_diameter));
    }
    for (auto* array : {&factors.log_trees, &factors.log_basal, &factors.top_factor,
                        &factors.dbh_factor}) {
      array->resize(fractions.size() + lane_padding, 0.0);
    }
    removals.push_back(std::move(factors));
  }
}

double SearchTables::slack(double value) const {
  return tolerance::prune_slack(value) + rounding;
}

}  // namespace staddle
