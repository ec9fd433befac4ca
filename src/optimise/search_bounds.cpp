// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/search_bounds.h"

#include <limits>

namespace staddle {

SearchBounds::SearchBounds(BoundTable after_cut) : after_cut_(std::move(after_cut)) {}

void SearchBounds::bound_next_cuts(const LatticeRules& rules, const SearchTables& tables,
                                   const ExactLimits& limits) {
  next_cut_.emplace(rules, tables, limits, after_cut_);
  of_age_.assign(tables.discount.size(), 0);
}

void SearchBounds::look_ahead(const SearchTables& tables, const Trajectory& stand, int from,
                              int to) {
  if (!next_cut_ || from > to) return;
  next_cut_kernels().bound_next_cut(tables, next_cut_->table(), stand, from, to, of_age_);
}

double SearchBounds::of_age(int age_yr) const {
  if (!next_cut_) return std::numeric_limits<double>::infinity();
  return wide(of_age_[static_cast<std::size_t>(age_yr)]);
}

double SearchBounds::look_after(const SearchTables& tables, const Trajectory& stand, int age_yr,
                                double recovery_per_yr, const CutOptions& cuts) {
  const auto t = static_cast<std::size_t>(age_yr);
  of_removal_.resize(cuts.revenue.size());
  return cut_kernels().bound_cuts(after_cut_.at(age_yr), recovery_per_yr, wide(stand.money[t]),
                                  wide(tables.discount[t]), cuts, of_removal_);
}

}  // namespace staddle
