// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "optimise/cut_kernels.h"
#include "staddle/optimise/stand_options.h"

namespace staddle {

// The state of a stand at the start of every regime.
SearchState start_state(const CaseKernel& kernel, const SearchTables& tables);

// The trees just after the removal `option`.
TreeTrack track_after(const SearchTables& tables, const CutOptions& cuts, std::size_t option);

// The state after the removal `option` of a stand at `age_yr`.
SearchState state_after(const CaseKernel& kernel, const SearchTables& tables,
                        const SearchState& state, const Trajectory& stand, int age_yr,
                        const CutOptions& cuts, std::size_t option, double removal);

// What SearchState::offset of a product becomes: its share of the timber stays.
double offset_after(const SearchTables& tables, const SearchState& state, const CutOptions& cuts,
                    std::size_t option, std::size_t product);

// The stretch that begins at a state: `plan.to` before `plan.from` where nothing can
// follow, and no cut where `cut_to` is before `cut_from`.
struct Stretch {
  StretchPlan plan;
  int cut_from = 0, cut_to = 0;
};
Stretch stretch_of(const LatticeRules& rules, const SearchTables& tables,
                   const StandOptions& options, const SearchState& state);
// The final harvests after a last cut at this age, as without storms.
StretchPlan last_plan(const LatticeRules& rules, int cut_yr);

}  // namespace staddle
