// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "optimise/bound_kernels.h"

namespace staddle {

// Where one removal leads a node of n: between the nodes `cell` and `cell + 1`, `along`
// of the way. Not `inside`: to fewer trees than any node has.
struct NodeImage {
  bool dropped = false;  // no stand near this node may be cut so
  bool inside = false;
  std::size_t cell = 0;
  double along = 0;
};

// A node of n between the images of two neighbours, `along` of the way.
struct NodeBetween {
  std::size_t below = 0;  // of the neighbours
  std::size_t node = 0;
  double along = 0;
};

// One removal at one age.
struct CutImage {
  double density_left = 1;           // rho: 1 - C after over 1 - C before
  double allowances = 1;             // as in BoundGrid
  std::vector<NodeImage> nodes;      // of every node of n
  std::vector<NodeBetween> between;  // rising
};

// Bounds on the next cut by age; see next_cut_bounds.h.
struct NextCutTable {
  int first_age_yr = 0;
  std::size_t rates = 0, tracks = 0;
  double low = 0, inverse_step = 1;  // of C
  std::size_t stride = 0;            // from node to node in the two arrays below
  LaneArray log_tpa, inverse_gap;    // [node][age]
  LaneArray value;                   // [age][rate][node of n][node of C]
};

struct NextCutKernels {
  // For each node i of n and j of C, where the removal leads into the grid:
  //   value = max(value, worth at the image + what worth exceeds its means by nearby)
  // and elsewhere above all bounds. `worth` and `value` are rows of CompetitionGrid::nodes,
  // node after node; `scratch` has room for two such and a row more.
  void (*raise_by_cut)(const CompetitionGrid&, const CutImage&, const Lane* worth, Lane* value,
                       LaneArray& scratch);
  // Money so far + what the timber is worth in a thinning, less its sale, + the table, for
  // a stand cut next at each of the ages; out of bounds outside the grid.
  void (*bound_next_cut)(const SearchTables&, const NextCutTable&, const Trajectory&, int from,
                         int to, LaneArray& bound);
};

const NextCutKernels& next_cut_kernels();

// Where nothing is known; finite, so that means of it are.
inline constexpr Lane no_bound = 1e30F;

}  // namespace staddle
