// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/search_tables.h"

#include <algorithm>
#include <cmath>

#include "stand/stand_constants.h"
#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

Lane narrow(double value) { return static_cast<Lane>(value); }

}  // namespace

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
  bound_density(kernel, rules);
  bound_rounding(kernel, rules);
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
    array->assign(size, 0);
  }
  for (std::size_t t = 0; t < size; ++t) {
    // Ages before the first and after the last are never read for an answer.
    const AgeRow& row = growth.row(std::clamp(static_cast<int>(t), first_yr, last_yr));
    survival[t] = narrow(row.survival_term);
    log_basal_constant[t] = narrow(row.log_basal_constant);
    log_basal_n[t] = narrow(row.log_basal_exponent);
    tons_trees[t] = narrow(row.log_tons_trees);
    tons_basal[t] = narrow(row.log_tons_basal);
    tons_constant[t] = narrow(row.log_tons_constant + row.log_tons_basal * row.log_basal_constant);
    tons_n[t] = narrow(row.log_tons_trees + row.log_tons_basal * row.log_basal_exponent);
    tons_w[t] = narrow(row.log_tons_basal);
    diameter_constant[t] = narrow(0.5 * (row.log_basal_constant - std::log(basal_area_factor)));
    diameter_n[t] = narrow(0.5 * (row.log_basal_exponent - 1.0));
    height_ft[t] = narrow(row.height_ft);
    crown_slope[t] = narrow(row.crown_slope / row.height_ft);
  }
  terms = assortment.terms().size();
  products = assortment.size();
  top_power = assortment.top_power();
  tree_power = assortment.tree_power();
  dbh_power = assortment.dbh_power();
  for (const MerchantableTerm& term : assortment.terms()) {
    top_term.push_back(narrow(term.top_term));
    dbh_term.push_back(narrow(term.dbh_term));
  }
  for (std::size_t i = 0; i < products; ++i) {
    for (std::size_t j = 0; j < terms; ++j) {
      coefficient.push_back(narrow(assortment.coefficient(i, j)));
    }
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
  for (std::size_t i = 0; i < products; ++i) {
    final_price.push_back(narrow(kernel.final_price(i)));
    thinning_price.push_back(narrow(kernel.thinning_price(i)));
  }
  for (std::size_t j = 0; j < terms; ++j) {
    double final = 0.0, thinning = 0.0;
    for (std::size_t i = 0; i < products; ++i) {
      const double share = kernel.assortment().coefficient(i, j) * growth_multiplier;
      final += kernel.final_price(i) * share;
      thinning += kernel.thinning_price(i) * share;
    }
    final_weight.push_back(narrow(final));
    thinning_weight.push_back(narrow(thinning));
  }
  const std::size_t size = survival.size();
  for (auto* array : {&discount, &land_discount, &other_timber, &yearly_before, &yearly_after,
                      &practices, &summed_before, &summed_after}) {
    array->assign(size, 0);
  }
  land_factor.assign(size, 1);
  double before = 0.0, after = 0.0;
  for (int at = kernel.present_yr(); at <= last_yr; ++at) {
    const auto t = static_cast<std::size_t>(at);
    const double now = kernel.discount(at);
    discount[t] = narrow(now);
    land_discount[t] = narrow(kernel.land_discount(at));
    other_timber[t] = narrow(kernel.other_timber_value(at));
    if (!standing) land_factor[t] = narrow(1.0 / (1.0 - kernel.land_discount(at)));
    if (at == kernel.present_yr()) continue;
    yearly_before[t] = narrow(kernel.yearly_money(at, false));
    yearly_after[t] = narrow(kernel.yearly_money(at, true));
    practices[t] = narrow(kernel.practice_money(at));
    before += now * (kernel.yearly_money(at, false) + kernel.practice_money(at));
    after += now * (kernel.yearly_money(at, true) + kernel.practice_money(at));
    summed_before[t] = narrow(before);
    summed_after[t] = narrow(after);
  }
}

void SearchTables::take_removals(const CaseKernel& kernel, const LatticeRules& rules) {
  const std::vector<double>& fractions = rules.removals();
  for (int entry = 0; entry < std::max(1, rules.max_thinnings()); ++entry) {
    const double q = kernel.cut_diameter_ratio(entry);
    RemovalFactors factors;
    for (const double removal : fractions) {
      const bool leaves = rules.leaves_trees(removal, entry);
      const double log_trees = leaves ? std::log1p(-removal / (q * q)) : 0.0;
      const double log_basal = leaves ? std::log1p(-removal) : 0.0;
      const double log_diameter = 0.5 * (log_basal - log_trees);
      factors.leaves_trees.push_back(leaves);
      factors.trees_left.push_back(narrow(std::exp(log_trees)));
      factors.basal_left.push_back(narrow(std::exp(log_basal)));
      factors.log_trees.push_back(narrow(log_trees));
      factors.log_basal.push_back(narrow(log_basal));
      factors.top_factor.push_back(narrow(std::exp(-top_power * log_diameter)));
      factors.dbh_factor.push_back(
          narrow(std::exp(tree_power * log_trees - dbh_power * log_diameter)));
    }
    for (auto* array : {&factors.log_trees, &factors.log_basal, &factors.top_factor,
                        &factors.dbh_factor, &factors.trees_left, &factors.basal_left}) {
      array->resize(fractions.size() + lane_padding, 0);
    }
    factors.row = factors.log_trees.size();
    factors.density_left.assign(factors.row * (static_cast<std::size_t>(last_yr) + 1), 0);
    for (int at = std::max(first_yr, rules.cut_from()); at <= rules.cut_to(); ++at) {
      const auto t = static_cast<std::size_t>(at);
      for (std::size_t f = 0; f < fractions.size(); ++f) {
        const double of_trees = wide(log_basal_n[t]) * wide(factors.log_trees[f]);
        factors.density_left[t * factors.row + f] =
            narrow(std::exp(wide(factors.log_basal[f]) - of_trees));
      }
    }
    removals.push_back(std::move(factors));
  }
}

void SearchTables::bound_density(const CaseKernel& kernel, const LatticeRules& rules) {
  earliest_cut_yr = std::max({first_yr, rules.cut_from(), kernel.present_yr()});
  double fall = 0.0, rise = 0.0;
  for (int at = earliest_cut_yr; at <= rules.cut_to(); ++at) {
    const double exponent = wide(log_basal_n[static_cast<std::size_t>(at)]);
    for (const RemovalFactors& factors : removals) {
      for (std::size_t f = 0; f < factors.leaves_trees.size(); ++f) {
        const double change = wide(factors.log_basal[f]) - exponent * wide(factors.log_trees[f]);
        fall = std::min(fall, change);
        rise = std::max(rise, change);
      }
    }
  }
  // Growth moves w towards zero, a cut by its change.
  const double start = std::log1p(-kernel.start().competition);
  least_log_density = std::min(0.0, start) + fall * rules.max_thinnings();
  most_log_density = std::max(0.0, start) + rise * rules.max_thinnings();
}

void SearchTables::bound_rounding(const CaseKernel& kernel, const LatticeRules& rules) {
  const StandPoint start = kernel.start();
  double final_weights = 0.0, thinning_weights = 0.0;
  for (std::size_t j = 0; j < terms; ++j) {
    final_weights += std::fabs(wide(final_weight[j]));
    thinning_weights += std::fabs(wide(thinning_weight[j]));
  }
  double largest = 0.0, costs = std::fabs(start.money) + std::fabs(delay_money);
  for (int at = std::min(rules.cut_from(), rules.final_from()); at <= last_yr; ++at) {
    const auto t = static_cast<std::size_t>(at);
    const double log_tpa = std::log(kernel.growth().trees_at(start.trees, at));
    const double log_least = std::min(log_tpa, std::log(fewest_trees_left));
    const double tons = std::exp(
        wide(tons_constant[t]) + wide(tons_w[t]) * most_log_density +
        std::max(wide(tons_n[t]) * log_tpa, wide(tons_n[t]) * log_least));
    const double weights = final_weights + (at <= rules.cut_to() ? thinning_weights : 0.0);
    const double other = wide(other_timber[t]);
    largest = std::max(largest, wide(discount[t]) * (weights * tons + other) *
                                    (standing ? 1.0 : wide(land_factor[t])));
    costs += wide(discount[t]) * (std::fabs(wide(yearly_before[t])) +
                                  std::fabs(wide(yearly_after[t])) +
                                  std::fabs(wide(practices[t])));
  }
  costs += std::fabs(land_value) + std::fabs(final_sale_cost) + std::fabs(thinning_sale_cost);
  if (!standing) costs *= wide(land_factor[static_cast<std::size_t>(rules.final_from())]);
  constexpr double bits_of_a_value = 100, bits_of_a_cut = 50, bits_of_a_cost = 30;
  const double last_bit = 0x1p-24;
  rounding = last_bit * ((bits_of_a_value + bits_of_a_cut * rules.max_thinnings()) * largest +
                         bits_of_a_cost * costs);
}

double SearchTables::slack(double value) const {
  return tolerance::prune_slack(value) + 2.0 * rounding;
}

}  // namespace staddle
