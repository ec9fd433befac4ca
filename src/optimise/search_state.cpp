// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/search_state.h"

#include <algorithm>

#include "staddle/hazard/damage.h"

namespace staddle {

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

TreeTrack track_after(const SearchTables& tables, const CutOptions& cuts, std::size_t option) {
  const double tpa = wide(cuts.tpa[option]);
  if (tpa <= tables.survival_floor) return {true, tpa};
  return {false, wide(cuts.invariant[option])};
}

SearchState state_after(const CaseKernel& kernel, const SearchTables& tables,
                        const SearchState& state, const Trajectory& stand, int age_yr,
                        const CutOptions& cuts, std::size_t option, double removal) {
  const auto t = static_cast<std::size_t>(age_yr);
  SearchState after;
  after.age_yr = age_yr;
  after.entries = state.entries + 1;
  after.first_thinning_past = true;
  after.trees = track_after(tables, cuts, option);
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
      after.offset[i] = offset_after(tables, state, cuts, option, i);
    }
  }
  return after;
}

double offset_after(const SearchTables& tables, const SearchState& state, const CutOptions& cuts,
                    std::size_t option, std::size_t product) {
  if (!tables.has_offsets) return 0.0;
  const double before = cuts.plain_before[product];
  const double left = before > 0.0 ? wide(cuts.plain_after[product][option]) / before : 1.0;
  return state.offset[product] * left;
}

StretchPlan last_plan(const LatticeRules& rules, int cut_yr) {
  const int from = std::max(rules.final_from(), cut_yr + rules.gap_yr());
  return {.from = from, .to = rules.final_to(), .final_from = from, .cuts_follow = false};
}

Stretch stretch_of(const LatticeRules& rules, const SearchTables& tables,
                   const StandOptions& options, const SearchState& state) {
  Stretch stretch{{}, rules.cut_from(), rules.cut_to()};
  StretchPlan& plan = stretch.plan;
  plan.to = rules.final_to();
  plan.final_from = rules.final_from();
  if (state.entries > 0) {
    plan.final_from = std::max(plan.final_from, state.age_yr + rules.gap_yr());
    stretch.cut_from = std::max(stretch.cut_from, state.age_yr + rules.gap_yr());
  } else if (state.memories > 0) {
    const CutMemory& last = state.memory[static_cast<std::size_t>(state.memories - 1)];
    stretch.cut_from = std::max(stretch.cut_from, last.age_yr + rules.gap_yr());
  }
  if (state.entries == 0 && options.first_thinning_at) {
    stretch.cut_from = std::max(stretch.cut_from, options.first_thinning_at->whole());
    stretch.cut_to = std::min(stretch.cut_to, options.first_thinning_at->whole());
    plan.final_from = plan.to + 1;
  }
  if (state.entries >= rules.max_thinnings()) stretch.cut_to = stretch.cut_from - 1;
  plan.cuts_follow = stretch.cut_from <= stretch.cut_to;
  plan.from = std::min(plan.final_from, plan.cuts_follow ? stretch.cut_from : plan.final_from);
  if (plan.from <= plan.to && !tables.perils.empty()) {
    // Storms link the years: none may be left out.
    plan.from = std::max(tables.first_yr, state.age_yr + (state.entries > 0 ? 1 : 0));
  }
  return stretch;
}

}  // namespace staddle
