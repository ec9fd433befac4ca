// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/vector_search.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "regime/evaluate.h"

namespace staddle {
namespace {

constexpr double minus_infinity = -std::numeric_limits<double>::infinity();

}  // namespace

VectorSearch::VectorSearch(const CaseKernel& kernel, const LatticeRules& rules,
                           const SearchTables& tables, const StandOptions& options,
                           const SearchEffort& effort)
    : kernel_(kernel),
      rules_(rules),
      tables_(tables),
      options_(options),
      vectors_(vector_kernels()),
      cut_kernels_(cut_kernels()),
      limits_(kernel, rules),
      last_cuts_(kernel, rules, tables, options),
      candidates_(kernel, rules, tables),
      by_age_{std::vector<double>(static_cast<std::size_t>(rules.final_to()) + 1, minus_infinity),
              std::vector<double>(static_cast<std::size_t>(rules.final_to()) + 1, minus_infinity)},
      effort_(effort) {
  for (int entries = 0; entries <= rules.max_thinnings(); ++entries) {
    stands_.emplace_back(tables);
    cuts_.emplace_back(rules.removals().size());
  }
}

void VectorSearch::run() {
  follow(start_state(kernel_, tables_));
  candidates_.settle();
}

void VectorSearch::follow(const SearchState& state) {
  const Stretch stretch = stretch_of(rules_, tables_, options_, state);
  if (stretch.plan.from > stretch.plan.to) return;
  const auto level = static_cast<std::size_t>(state.entries);
  double highest = 0.0;
  vectors_.follow(tables_, &state, 1, stretch.plan, &stands_[level], &highest);
  ++followed_;
  if (stretch.plan.final_from <= stretch.plan.to) {
    note_values(values_of(stands_[level], stretch.plan, highest));
  }
  const bool bounded = bounds_ && state.entries + 1 == rules_.max_thinnings();
  if (bounded) {
    bounds_->look_ahead(tables_, stands_[level], stretch.cut_from, stretch.cut_to);
    if (outside_bounds_) {
      outside_bounds_->look_ahead(tables_, stands_[level], stretch.cut_from, stretch.cut_to);
    }
  }
  for (int at = stretch.cut_from; at <= stretch.cut_to && finished_; ++at) {
    if (options_.stop.stop_requested()) finished_ = false;
    if (bounded && age_is_pruned(state, at)) continue;
    try_cuts(state, at);
  }
}

// Small lattices are searched whole before tables of bounds would be made.
void VectorSearch::make_bounds() {
  bounds_tried_ = true;
  LocalSearch(kernel_, rules_, tables_, limits_, options_, by_age_).run(candidates_);
  const std::vector<bool> all(tables_.discount.size(), true);
  auto table = BoundTable::make(kernel_, rules_, tables_, land_worth(), all);
  if (!table) return;
  bounds_.emplace(std::move(*table));
  if (effort_.bound_next_cuts) bounds_->bound_next_cuts(rules_, tables_, limits_);
  if (options_.windows) guess_windows();
}

SearchBounds VectorSearch::bounds_outside(const WindowAges& ages) const {
  std::vector<bool> outside(tables_.discount.size(), true);
  for (int at = ages.final_low; at <= ages.final_high; ++at) {
    outside[static_cast<std::size_t>(at)] = false;
  }
  SearchBounds bounds(*BoundTable::make(kernel_, rules_, tables_, bounds_->land(), outside));
  if (effort_.bound_next_cuts) bounds.bound_next_cuts(rules_, tables_, limits_);
  return bounds;
}

// Regimes outside the guess are kept down to the floor of the best yet, a little below
// that of the best in the end: so one search tells both the best and, mostly, the windows.
void VectorSearch::guess_windows() {
  const double best = highest_of_all();
  guessed_floor_ = best - near_best_tolerance_usd_ac(best) - tables_.slack(best);
  Champion any;
  any.regime.cuts = 1;
  guess_ = outermost_ages(
      rules_, any, [&](int at) { return is_near(by_age_.final, at, guessed_floor_); },
      [&](int at) { return is_near(by_age_.first, at, guessed_floor_); });
  outside_bounds_ = bounds_outside(guess_);
}

bool VectorSearch::is_near(const std::vector<double>& highest, int at, double floor) const {
  return highest[static_cast<std::size_t>(at)] >= floor;
}

bool VectorSearch::first_is_outside(const WindowAges& ages, int first) const {
  return ages.first_low && (first < *ages.first_low || first > *ages.first_high);
}

// An acre bare again: the land's value, or the best land expectation value yet.
double VectorSearch::land_worth() const {
  return tables_.standing ? tables_.land_value : highest_of_all();
}

double VectorSearch::highest_of_all() const {
  double highest = minus_infinity;
  for (int cuts = 0; cuts <= rules_.max_thinnings(); ++cuts) {
    highest = std::max(highest, candidates_.highest(cuts));
  }
  return highest;
}

// With Z = alpha + beta land, Z - land = (LEV - land)(1 - beta): a regime whose objective
// reaches `objective` has a Z of at least this.
double VectorSearch::threshold(double objective) const {
  if (tables_.standing) return objective;
  const double land = bounds_->land();
  const int farthest = objective >= land ? rules_.final_from() : rules_.final_to();
  const double least_share = 1.0 - wide(tables_.land_discount[static_cast<std::size_t>(farthest)]);
  return land + (objective - land) * least_share;
}

void VectorSearch::note_values(const HarvestValues& values) {
  valued_ += values.by_age.size();
  if (seeking_windows_) {
    if (values.highest >= floor_ - tables_.rounding) widen_by_values(values);
    return;
  }
  if (options_.windows) by_age_.note(values, regime_.cuts > 0 ? regime_.age_yr[0] : 0);
  if (!(values.highest > candidates_.floor(regime_.cuts))) return;
  for (int at = values.from; at <= values.to(); ++at) {
    regime_.final_yr = at;
    candidates_.offer(values.at(at), regime_);
  }
}

bool VectorSearch::widens(int final_yr) const {
  if (final_yr < near_.final_low || final_yr > near_.final_high) return true;
  return regime_.cuts > 0 && first_is_outside(near_, regime_.age_yr[0]);
}

void VectorSearch::widen(int final_yr) {
  near_.final_low = std::min(near_.final_low, final_yr);
  near_.final_high = std::max(near_.final_high, final_yr);
  if (!near_.first_low || regime_.cuts == 0) return;
  near_.first_low = std::min(*near_.first_low, regime_.age_yr[0]);
  near_.first_high = std::max(*near_.first_high, regime_.age_yr[0]);
}

void VectorSearch::widen_by_values(const HarvestValues& values) {
  for (int at = values.from; at <= values.to(); ++at) {
    if (values.at(at) < floor_ - tables_.rounding || !widens(at)) continue;
    regime_.final_yr = at;
    const RegimeValue exact = evaluate(kernel_, regime_of(regime_, rules_));
    if (exact.objective.in(dollars_per_acre) >= floor_) widen(at);
  }
}

// Whether no age outside what is known could still be near the best.
bool VectorSearch::all_is_told() const {
  if (bounds_) {
    // Inside the guess regimes were pruned that are below the best alone.
    const bool covered =
        floor_ >= guessed_floor_ && near_.final_low <= guess_.final_low &&
        near_.final_high >= guess_.final_high &&
        (!near_.first_low ||
         (guess_.first_low && *near_.first_low <= *guess_.first_low &&
          *near_.first_high >= *guess_.first_high));
    if (!covered) return false;
  }
  const double doubtful = floor_ - tables_.rounding;
  for (int at = rules_.final_from(); at <= rules_.final_to(); ++at) {
    const bool known = at >= near_.final_low && at <= near_.final_high;
    if (!known && is_near(by_age_.final, at, doubtful)) return false;
  }
  for (int at = rules_.cut_from(); near_.first_low && at <= rules_.cut_to(); ++at) {
    if (first_is_outside(near_, at) && is_near(by_age_.first, at, doubtful)) return false;
  }
  return true;
}

WindowAges VectorSearch::near_ages(const Champion& best, double floor) {
  const double sure = floor + tables_.rounding;
  near_ = outermost_ages(
      rules_, best,
      [&](int at) { return at == best.regime.final_yr || is_near(by_age_.final, at, sure); },
      [&](int at) { return at == best.regime.age_yr[0] || is_near(by_age_.first, at, sure); });
  floor_ = floor;
  if (all_is_told()) return near_;
  seeking_windows_ = true;
  if (bounds_) outside_bounds_ = bounds_outside(near_);
  follow(start_state(kernel_, tables_));
  seeking_windows_ = false;
  return near_;
}

void VectorSearch::try_cuts(const SearchState& state, int age_yr) {
  const std::size_t allowed = limits_.removals_allowed(age_yr);
  const auto level = static_cast<std::size_t>(state.entries);
  const Trajectory& stand = stands_[level];
  if (allowed == 0 || !limits_.stand_may_be_cut(regime_, stand, age_yr)) return;
  CutOptions& cuts = cuts_[level];
  cut_kernels_.work_out_cuts(tables_, state, stand, age_yr, allowed, limits_.cut_limits(), cuts);
  const RemovalFactors& factors = tables_.removals_at(state.entries);
  const bool last = state.entries + 1 == rules_.max_thinnings();
  const bool pruning = last && bounds_;
  if (pruning) {
    set_hurdles(state.entries == 0 ? age_yr : regime_.age_yr[0]);
    if (!bound_cuts(stand, age_yr, cuts)) return;
  }
  const auto entry = static_cast<std::size_t>(regime_.cuts);
  for (std::size_t option = 0; option < allowed; ++option) {
    if (!factors.leaves_trees[option]) continue;
    if (state.entries == 0 && !first_removal_asked(options_, rules_.removals()[option])) continue;
    if (pruning && is_pruned(option)) continue;
    if (!limits_.cut_may_be_taken(regime_, age_yr, cuts, option)) continue;
    regime_.age_yr[entry] = age_yr;
    if (last) {
      last_cuts_.add(state, stand, age_yr, cuts, option);
      if (last_cuts_.full()) value_last_cuts(entry);
      continue;
    }
    const SearchState after = state_after(kernel_, tables_, state, stand, age_yr, cuts, option,
                                          rules_.removals()[option]);
    regime_.removal[entry] = static_cast<int>(option);
    ++regime_.cuts;
    follow(after);
    --regime_.cuts;
  }
  if (!last_cuts_.empty()) value_last_cuts(entry);
}

void VectorSearch::value_last_cuts(std::size_t entry) {
  if (last_cuts_.value()) {
    followed_ += last_cuts_.count();
    ++regime_.cuts;
    for (std::size_t i = 0; i < last_cuts_.count(); ++i) {
      regime_.removal[entry] = last_cuts_.option(i);
      note_values(last_cuts_.values(i));
    }
    --regime_.cuts;
  }
  last_cuts_.clear();
  if (followed_ >= effort_.patience && !bounds_tried_ && !seeking_windows_) make_bounds();
}

// While the best is sought, bounds are held to it, and outside the guessed windows to
// their floor; while windows are sought, all to the floor and only outside of them.
void VectorSearch::set_hurdles(int first_yr) {
  const auto held_to = [&](double objective) {
    const double least = threshold(objective);
    return least - tables_.slack(least);
  };
  const bool outside = first_is_outside(seeking_windows_ ? near_ : guess_, first_yr);
  hurdle_count_ = 1;
  if (seeking_windows_) {
    hurdles_[0] = {outside ? &*bounds_ : &*outside_bounds_, held_to(floor_)};
    return;
  }
  const double best =
      options_.by_count ? candidates_.highest(rules_.max_thinnings()) : highest_of_all();
  hurdles_[0] = {&*bounds_, held_to(best)};
  if (!options_.windows) return;
  if (outside) {
    hurdles_[0].least = std::min(hurdles_[0].least, held_to(guessed_floor_));
  } else {
    hurdles_[hurdle_count_++] = {&*outside_bounds_, held_to(guessed_floor_)};
  }
}

bool VectorSearch::age_is_pruned(const SearchState& state, int age_yr) {
  set_hurdles(state.entries == 0 ? age_yr : regime_.age_yr[0]);
  for (std::size_t i = 0; i < hurdle_count_; ++i) {
    if (hurdles_[i].bounds->of_age(age_yr) >= hurdles_[i].least) return false;
  }
  return true;
}

bool VectorSearch::bound_cuts(const Trajectory& stand, int age_yr, const CutOptions& cuts) {
  const double rate =
      kernel_.response_rate(wide(stand.crown_ratio[static_cast<std::size_t>(age_yr)]));
  bool any = false;
  for (std::size_t i = 0; i < hurdle_count_; ++i) {
    const double largest = hurdles_[i].bounds->look_after(tables_, stand, age_yr, rate, cuts);
    any = any || largest >= hurdles_[i].least;
  }
  return any;
}

bool VectorSearch::is_pruned(std::size_t option) const {
  for (std::size_t i = 0; i < hurdle_count_; ++i) {
    if (hurdles_[i].bounds->of_removal(option) >= hurdles_[i].least) return false;
  }
  return true;
}

}  // namespace staddle
