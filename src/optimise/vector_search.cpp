// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/vector_search.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "regime/evaluate.h"
#include "staddle/hazard/damage.h"

namespace staddle {
namespace {

constexpr double minus_infinity = -std::numeric_limits<double>::infinity();

}  // namespace

SearchState start_state(const CaseKernel& kernel, const SearchTables& tables) {
  const StandPoint point = kernel.start();
  SearchState state;
  state.age_yr = point.age_yr;
  state.first_thinning_past = point.first_thinning_past;
  state.trees = point.trees;
  state.competition = point.competition;
  state.recovery_per_yr = point.recovery_per_yr;
  state.money = point.money;
  state.memories = point.memories;
  state.memory = point.memory;
  if (tables.has_offsets) {
    for (std::size_t i = 0; i < tables.products; ++i) {
      state.offset[i] = point.scaled_start[i] - tables.growth_multiplier * point.plain_start[i];
    }
  }
  return state;
}

SearchState state_after(const CaseKernel& kernel, const SearchTables& tables,
                        const SearchState& state, const Trajectory& stand, int age_yr,
                        const CutOptions& cuts, std::size_t option, double removal) {
  const auto t = static_cast<std::size_t>(age_yr);
  SearchState after;
  after.age_yr = age_yr;
  after.entries = state.entries + 1;
  after.first_thinning_past = true;
  const double tpa = wide(cuts.tpa[option]);
  after.trees.held = tpa <= tables.survival_floor;
  after.trees.invariant = after.trees.held ? tpa : wide(cuts.invariant[option]);
  after.competition = wide(cuts.competition[option]);
  after.recovery_per_yr = kernel.response_rate(wide(stand.crown_ratio[t]));
  after.alive = wide(stand.alive[t]);
  after.money = wide(stand.money[t]) +
                wide(tables.discount[t]) * after.alive * wide(cuts.revenue[option]);
  after.land_weight = wide(stand.land_weight[t]);
  if (!tables.perils.empty()) {
    after.memory = state.memory;
    after.memories = state.memories + 1;
    after.memory[static_cast<std::size_t>(state.memories)] = {
        age_yr, opening_of_cut(removal),
        capped_slenderness(wide(tables.height_ft[t]), wide(stand.diameter_in[t]))};
  }
  if (tables.has_offsets) {
    for (std::size_t i = 0; i < tables.products; ++i) {
      const double before = cuts.plain_before[i];
      const double left = before > 0.0 ? wide(cuts.plain_after[i][option]) / before : 1.0;
      after.offset[i] = state.offset[i] * left;
    }
  }
  return after;
}

StretchPlan plan_of(const LatticeRules& rules, const SearchTables& tables,
                    const StandOptions& options, const SearchState& state, int& cut_from,
                    int& cut_to) {
  StretchPlan plan;
  plan.to = rules.final_to();
  plan.final_from = rules.final_from();
  cut_to = rules.cut_to();
  cut_from = rules.cut_from();
  if (state.entries > 0) plan.final_from = std::max(plan.final_from, state.age_yr + rules.gap_yr());
  if (state.memories > 0 || state.entries > 0) {
    const int last = state.entries > 0
                         ? state.age_yr
                         : state.memory[static_cast<std::size_t>(state.memories - 1)].age_yr;
    cut_from = std::max(cut_from, last + rules.gap_yr());
  }
  if (state.entries == 0 && options.first_thinning_at) {
    cut_from = std::max(cut_from, options.first_thinning_at->whole());
    cut_to = std::min(cut_to, options.first_thinning_at->whole());
    plan.final_from = plan.to + 1;
  }
  if (state.entries >= rules.max_thinnings()) cut_to = cut_from - 1;
  plan.cuts_follow = cut_from <= cut_to;
  plan.from = std::min(plan.final_from, plan.cuts_follow ? cut_from : plan.final_from);
  if (plan.from <= plan.to && !tables.perils.empty()) {
    // Storms link the years: none may be left out.
    plan.from = std::max(tables.first_yr, state.age_yr + (state.entries > 0 ? 1 : 0));
  }
  return plan;
}

VectorSearch::VectorSearch(const CaseKernel& kernel, const LatticeRules& rules,
                           const SearchTables& tables, const StandOptions& options)
    : kernel_(kernel),
      rules_(rules),
      tables_(tables),
      options_(options),
      vectors_(vector_kernels()),
      limits_(kernel, rules),
      candidates_(kernel, rules, tables),
      by_first_cut_(static_cast<std::size_t>(rules.final_to()) + 1, minus_infinity),
      by_final_(by_first_cut_) {
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
  int cut_from = 0, cut_to = 0;
  const StretchPlan plan = plan_of(rules_, tables_, options_, state, cut_from, cut_to);
  if (plan.from > plan.to) return;
  const auto level = static_cast<std::size_t>(state.entries);
  const double highest = vectors_.follow(tables_, state, plan, stands_[level]);
  note_values(state, plan, highest);
  for (int at = cut_from; at <= cut_to && finished_; ++at) {
    if (options_.stop.stop_requested()) finished_ = false;
    try_cuts(state, at);
  }
}

void VectorSearch::note_values(const SearchState& state, const StretchPlan& plan,
                               double highest) {
  const Trajectory& stand = stands_[static_cast<std::size_t>(state.entries)];
  valued_ += static_cast<std::uint64_t>(std::max(0, plan.to - plan.final_from + 1));
  if (seeking_windows_) {
    if (highest >= floor_ - tables_.rounding) widen_by_values(stand, plan);
    return;
  }
  if (options_.windows) note_highest(stand, plan, highest);
  if (!(highest > candidates_.floor(regime_.cuts))) return;
  for (int at = plan.final_from; at <= plan.to; ++at) {
    regime_.final_yr = at;
    candidates_.offer(wide(stand.objective[static_cast<std::size_t>(at)]), regime_);
  }
}

void VectorSearch::note_highest(const Trajectory& stand, const StretchPlan& plan,
                                double highest) {
  for (auto t = static_cast<std::size_t>(plan.final_from); t <= static_cast<std::size_t>(plan.to);
       ++t) {
    by_final_[t] = std::max(by_final_[t], wide(stand.objective[t]));
  }
  if (regime_.cuts == 0) return;
  double& holder = by_first_cut_[static_cast<std::size_t>(regime_.age_yr[0])];
  holder = std::max(holder, highest);
}

bool VectorSearch::widens(int final_yr) const {
  if (final_yr < near_.final_low || final_yr > near_.final_high) return true;
  return near_.first_low && regime_.cuts > 0 &&
         (regime_.age_yr[0] < *near_.first_low || regime_.age_yr[0] > *near_.first_high);
}

void VectorSearch::widen(int final_yr) {
  near_.final_low = std::min(near_.final_low, final_yr);
  near_.final_high = std::max(near_.final_high, final_yr);
  if (!near_.first_low || regime_.cuts == 0) return;
  near_.first_low = std::min(*near_.first_low, regime_.age_yr[0]);
  near_.first_high = std::max(*near_.first_high, regime_.age_yr[0]);
}

void VectorSearch::widen_by_values(const Trajectory& stand, const StretchPlan& plan) {
  for (int at = plan.final_from; at <= plan.to; ++at) {
    const double value = wide(stand.objective[static_cast<std::size_t>(at)]);
    if (value < floor_ - tables_.rounding || !widens(at)) continue;
    regime_.final_yr = at;
    const RegimeValue exact = evaluate(kernel_, regime_of(regime_, rules_));
    if (exact.objective.in(dollars_per_acre) >= floor_) widen(at);
  }
}

// Whether no age outside what is known could still be near the best.
bool VectorSearch::all_is_told() const {
  const double doubtful = floor_ - tables_.rounding;
  for (int at = rules_.final_from(); at <= rules_.final_to(); ++at) {
    const bool known = at >= near_.final_low && at <= near_.final_high;
    if (!known && by_final_[static_cast<std::size_t>(at)] >= doubtful) return false;
  }
  if (!near_.first_low) return true;
  for (int at = rules_.cut_from(); at <= rules_.cut_to(); ++at) {
    const bool known = at >= *near_.first_low && at <= *near_.first_high;
    if (!known && by_first_cut_[static_cast<std::size_t>(at)] >= doubtful) return false;
  }
  return true;
}

WindowAges VectorSearch::near_ages(const Champion& best, double floor) {
  const double sure = floor + tables_.rounding;
  near_ = outermost_ages(
      rules_, best,
      [&](int at) {
        return at == best.regime.final_yr || by_final_[static_cast<std::size_t>(at)] >= sure;
      },
      [&](int at) {
        return at == best.regime.age_yr[0] || by_first_cut_[static_cast<std::size_t>(at)] >= sure;
      });
  floor_ = floor;
  if (all_is_told()) return near_;
  seeking_windows_ = true;
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
  vectors_.work_out_cuts(tables_, state, stand, age_yr, allowed, limits_.cut_limits(), cuts);
  const RemovalFactors& factors = tables_.removals_at(state.entries);
  for (std::size_t option = 0; option < allowed; ++option) {
    if (!factors.leaves_trees[option]) continue;
    if (!limits_.cut_may_be_taken(regime_, age_yr, cuts, option)) continue;
    const SearchState after = state_after(kernel_, tables_, state, stand, age_yr, cuts, option,
                                          rules_.removals()[option]);
    const auto entry = static_cast<std::size_t>(regime_.cuts++);
    regime_.age_yr[entry] = age_yr;
    regime_.removal[entry] = static_cast<int>(option);
    follow(after);
    --regime_.cuts;
  }
}

}  // namespace staddle
