// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <limits>
#include <vector>

#include "optimise/search_tables.h"

namespace staddle {

// A stand just after a cut, or at the start: all that its future depends on. Money is
// expected and discounted to the present, as in StandPoint.
struct SearchState {
  int age_yr = 0;
  int entries = 0;
  bool first_thinning_past = false;
  TreeTrack trees;
  double competition = 0;      // CI at age_yr
  double recovery_per_yr = 0;
  double money = 0, land_weight = 0, alive = 1;
  int memories = 0;
  std::array<CutMemory, most_cut_memories> memory{};
  ProductTons offset{};        // scaled tons = multiplier x plain tons + offset
};

// One stretch: the stand at every age from a state on, without a further cut. Arrays by
// age; valid from `from` to `to`.
struct Trajectory {
  Trajectory() = default;
  explicit Trajectory(const SearchTables& tables);

  int from = 0, to = 0;
  LaneArray tpa, log_tpa;            // N, n = ln N
  LaneArray density, log_density;    // 1 - CI, w = ln(1 - CI)
  LaneArray log_tons, top_factor, dbh_factor, diameter_in, crown_ratio;
  std::vector<LaneArray> merchantable;  // M by term, without growth multiplier
  LaneArray stumpage;                // final prices, other timber included
  LaneArray money, land_weight, alive;  // before a cut or harvest of the year
  LaneArray objective;               // of a final harvest; -infinity where none
  // Storms: what a year loses and gains per acre that enters it.
  LaneArray loss, loss_money;
};

// What is asked of one stretch.
struct StretchPlan {
  int from = 0, to = 0;        // ages to be worked out
  int final_from = 0;          // objective is -infinity before, and after `to`
  bool cuts_follow = false;    // also what a cut needs
};

// Vector arithmetic, in the widest instructions that this processor has. Its values only
// search and prune; what is reported comes from the plain evaluator.
struct VectorKernels {
  // Follows `count` states of one age and plan side by side, so that their long chains of
  // arithmetic overlap; writes the largest objective of each.
  void (*follow)(const SearchTables&, const SearchState* states, std::size_t count,
                 const StretchPlan&, Trajectory* stands, double* highest);
};

const VectorKernels& vector_kernels();

}  // namespace staddle
