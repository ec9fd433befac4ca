// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "optimise/vector_kernels.h"

namespace staddle {

// Stands just after the last cut they get, all cut at one age from one stand, without
// storms. Arrays by cut.
struct LastStands {
  // So many are valued together.
  static constexpr std::size_t most = 8;
  LastStands();

  int age_yr = 0;
  double recovery_per_yr = 0;  // one for all: the crowns before the cut decide it
  std::size_t count = 0;
  // Of TreeTrack; trees that are held have the invariant 1, the others the held number 0.
  LaneArray invariant, held_tpa;
  LaneArray competition;
  LaneArray money;         // all until then, what the cut earned included
  LaneArray offset_value;  // of tons beside the grown ones: SearchState::offset, priced
};

// What does not depend on the stand, for the harvests after a cut of one age: the rows of
// all stands one behind the other, so that no lane stays empty but in the last vector.
struct HarvestRows {
  HarvestRows(const SearchTables& tables, int cut_yr, const StretchPlan& plan);

  int first_yr = 0;
  std::size_t ages = 0;  // numbers of one stand
  LaneArray survival, diameter_constant, diameter_n, tons_constant, tons_n, tons_w;
  // objective = gain x stumpage + fixed + scale x money before
  LaneArray gain, fixed, scale;
};

// Working space of one call and its result.
struct LastHarvests {
  explicit LastHarvests(const SearchTables& tables);

  LaneArray curve;  // what is left of the competition, by age
  // As the rows.
  LaneArray invariant, held_tpa, competition, money, offset_value;
  LaneArray log_tpa, log_density, log_tons, top_factor, dbh_factor;
  LaneArray objective;
  std::array<double, LastStands::most> highest{};  // by stand
};

struct LastHarvestKernels {
  // Values every final harvest of the rows for all stands.
  void (*value)(const SearchTables&, const LastStands&, const HarvestRows&, LastHarvests&);
};

const LastHarvestKernels& last_harvest_kernels();

}  // namespace staddle
