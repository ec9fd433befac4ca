// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "optimise/champions.h"
#include "optimise/lattice_rules.h"

namespace staddle {

// The stretch that begins with a cut, or at the start: what its cut yields, and what
// stands in every year that follows without another cut.
struct PoolStretch {
  LatticeRegime regime;       // the cuts up to here
  int from_yr = 0;            // of the cut; at the start the present
  int final_from_yr = 0;      // first final harvest
  int first_row_yr = 0;       // of the rows kept
  std::size_t first_row = 0;  // rows run from first_row_yr to the last final harvest
  std::size_t cut_tons = 0;   // place of the tons cut, by product; not at the start
};

// All regimes of a lattice without any money: stretches depth first, each after the one
// that it continues.
struct PoolTree {
  std::vector<PoolStretch> stretches;
  std::vector<double> cut_tons;  // per acre still standing
  // Row by row: tons by product; with storms also the share of the acres that the year
  // loses, what of a dollar of stumpage it salvages, and the dollars of clean-up.
  std::vector<double> rows;
  std::size_t products = 0, row_width = 0;
  bool storms = false;
  int final_to_yr = 0;
  std::size_t regimes = 0;

  const double* row(const PoolStretch& stretch, int age_yr) const {
    return rows.data() + (stretch.first_row +
                          static_cast<std::size_t>(age_yr - stretch.first_row_yr)) * row_width;
  }
};

PoolTree grow_pool_tree(const CaseKernel& kernel, const LatticeRules& rules);

}  // namespace staddle
