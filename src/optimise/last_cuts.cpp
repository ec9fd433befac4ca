// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/last_cuts.h"

namespace staddle {

HarvestValues values_of(const Trajectory& stand, const StretchPlan& plan, double highest) {
  const auto from = static_cast<std::size_t>(plan.final_from);
  const auto ages = static_cast<std::size_t>(plan.to - plan.final_from + 1);
  return {std::span(stand.objective).subspan(from, ages), plan.final_from, highest};
}

LastCuts::LastCuts(const CaseKernel& kernel, const LatticeRules& rules, const SearchTables& tables,
                   const StandOptions& options)
    : kernel_(kernel),
      rules_(rules),
      tables_(tables),
      options_(options),
      harvests_(tables),
      rows_of_cut_age_(static_cast<std::size_t>(rules.final_to()) + 1) {
  options_of_cut_.reserve(most);
  if (!storms()) return;
  states_.reserve(most);
  followed_.assign(most, Trajectory(tables));
}

void LastCuts::add(const SearchState& state, const Trajectory& stand, int age_yr,
                   const CutOptions& cuts, std::size_t option) {
  if (storms()) {
    states_.push_back(state_after(kernel_, tables_, state, stand, age_yr, cuts, option,
                                  rules_.removals()[option]));
    if (empty()) plan_ = stretch_of(rules_, tables_, options_, states_.front()).plan;
  } else {
    add_stand(state, stand, age_yr, cuts, option);
  }
  options_of_cut_.push_back(static_cast<int>(option));
}

// What state_after() says of the cut, as far as a last harvest needs it.
void LastCuts::add_stand(const SearchState& state, const Trajectory& stand, int age_yr,
                         const CutOptions& cuts, std::size_t option) {
  const auto t = static_cast<std::size_t>(age_yr);
  if (empty()) {
    stands_.age_yr = age_yr;
    stands_.recovery_per_yr = kernel_.response_rate(wide(stand.crown_ratio[t]));
    plan_ = last_plan(rules_, age_yr);
  }
  const std::size_t i = stands_.count++;
  const TreeTrack trees = track_after(tables_, cuts, option);
  stands_.invariant[i] = trees.held ? Lane{1} : static_cast<Lane>(trees.invariant);
  stands_.held_tpa[i] = trees.held ? static_cast<Lane>(trees.invariant) : Lane{0};
  stands_.competition[i] = cuts.competition[option];
  stands_.money[i] = static_cast<Lane>(wide(stand.money[t]) +
                                       wide(tables_.discount[t]) * wide(cuts.revenue[option]));
  double offset_value = 0.0;
  for (std::size_t p = 0; tables_.has_offsets && p < tables_.products; ++p) {
    offset_value += offset_after(tables_, state, cuts, option, p) * wide(tables_.final_price[p]);
  }
  stands_.offset_value[i] = static_cast<Lane>(offset_value);
}

void LastCuts::clear() {
  options_of_cut_.clear();
  states_.clear();
  stands_.count = 0;
}

bool LastCuts::value() {
  if (plan_.final_from > plan_.to) return false;
  if (storms()) {
    vector_kernels().follow(tables_, states_.data(), count(), plan_, followed_.data(),
                            highest_.data());
    return true;
  }
  std::optional<HarvestRows>& rows = rows_of_cut_age_[static_cast<std::size_t>(stands_.age_yr)];
  if (!rows) rows.emplace(tables_, stands_.age_yr, plan_);
  last_harvest_kernels().value(tables_, stands_, *rows, harvests_);
  return true;
}

HarvestValues LastCuts::values(std::size_t cut) const {
  if (storms()) return values_of(followed_[cut], plan_, highest_[cut]);
  const auto ages = static_cast<std::size_t>(plan_.to - plan_.final_from + 1);
  return {std::span(harvests_.objective).subspan(cut * ages, ages), plan_.final_from,
          harvests_.highest[cut]};
}

}  // namespace staddle
