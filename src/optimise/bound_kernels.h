// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "optimise/cut_kernels.h"

namespace staddle {

// The nodes of C and, finer, the points between which curvature is bounded.
struct CompetitionGrid {
  static constexpr std::size_t nodes = BoundSlice::row;
  static constexpr std::size_t parts = 2;  // sub-intervals of a cell
  static constexpr std::size_t intervals = (nodes - 1) * parts;

  CompetitionGrid() = default;
  CompetitionGrid(double low, double high);
  double low = 0, step = 1;
  LaneArray node;                     // C
  LaneArray node_density, end_density, middle_density;  // w = ln(1 - C)
  LaneArray end_left, middle_left;    // 1 - C
};

// How far a function bends down and how steep it is: -f'' <= curve, |f'| <= slope.
struct Bend {
  double curve = 0, slope = 0;
};

// What a plan adds to the value of the stand at one node of n.
struct PlanTerms {
  Lane constant = 0, linear = 0, square = 0;
};

struct BoundKernels {
  // S = sum of weight_j M_j along C at one age and n; returns its bend in C.
  //
  // With L = tons_w + p1 x1 + p2 x2, L' = -(p1^2 x1 + p2^2 x2), L'' = p1^3 x1 + p2^3 x2,
  // r = 1 - C, x1 = -top_term X1, x2 = -dbh_term X2:
  //   -M_CC = (M/r^2)(L - L^2 - L')
  //   |M_CCC| <= (M/r^3)(max(.385, L(L-1)(L-2)) + 3 max(1, L-1)|L'| + L'')
  // and over an interval -S_CC is at most its value in the middle + half the width times
  // the bound on |S_CCC|, M taken at the low end of C, x1, x2, 1/r at the high end.
  Bend (*along_competition)(const SearchTables&, const LaneArray& weight, int age_yr,
                            double log_tpa, const CompetitionGrid&, Lane* value);
  // The bend in n between two nodes, over all C, by interval arithmetic term by term with
  // its sign: M_n = M L, -M_nn = M (q1^2 x1 + q2^2 x2 - L^2), L = tons_n - q1 x1 - q2 x2.
  Bend (*along_trees)(const SearchTables&, const LaneArray& weight, int age_yr,
                      double low_log_tpa, double high_log_tpa, const CompetitionGrid&);
  // For each node i of n and j of C:
  //   value = max(value, line_i at C_j x decay + constant + linear |C_j| + square C_j^2)
  // Lines and values stand node after node, CompetitionGrid::nodes numbers each.
  void (*raise)(const CompetitionGrid&, const Lane* lines, double decay,
                const std::vector<PlanTerms>& terms, Lane* values);
};

const BoundKernels& bound_kernels();

}  // namespace staddle
