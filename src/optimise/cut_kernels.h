// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "optimise/vector_kernels.h"

namespace staddle {

// The cuts of one stand at one age, one per removal.
struct CutOptions {
  CutOptions() = default;
  explicit CutOptions(std::size_t removals);

  std::size_t count = 0;
  LaneArray log_tpa, tpa, competition;  // just after
  LaneArray invariant;  // of TreeTrack just after; where trees are held, without meaning
  LaneArray revenue;    // net, per acre standing
  // The least of (what is there - what a limit asks) over all limits: below zero the cut
  // is not admissible. Trees, square feet and tons alike.
  LaneArray margin;
  // Tons by product, where tons have offsets.
  ProductTons plain_before{};
  std::vector<LaneArray> plain_after;
  std::vector<LaneArray> merchantable_cut;  // M before less M after, by term
};

// The bounds of one age: [rate][node of n][node of C]; see bound_table.h.
struct BoundSlice {
  static constexpr std::size_t row = 16;  // nodes of C
  std::size_t rates = 0, tracks = 0;
  double low = 0, inverse_step = 1;  // of C
  double inverse_rate_step = 0;
  LaneArray log_tpa;      // of the nodes, rising
  LaneArray inverse_gap;  // 1/(gap to the next node)
  LaneArray value;
};

// What a cut has to leave and to yield, per acre.
struct CutLimits {
  double trees = 0, basal_area = 0, tons = 0, rise = 0;
};

struct CutKernels {
  // The first `count` removals at an age of a trajectory whose plan said cuts follow.
  void (*work_out_cuts)(const SearchTables&, const SearchState&, const Trajectory&, int age_yr,
                        std::size_t count, const CutLimits&, CutOptions&);
  // Money so far + revenue + bound of each cut that was worked out, at the rate that
  // follows it; infinite outside the grid. Returns the largest.
  double (*bound_cuts)(const BoundSlice&, double rate, double money, double discount,
                       const CutOptions&, LaneArray& bound);
};

const CutKernels& cut_kernels();

}  // namespace staddle
