// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "optimise/champions.h"
#include "optimise/lattice_rules.h"
#include "optimise/table_bounds.h"
#include "staddle/optimise/solve.h"

namespace staddle {

struct SearchOutcome {
  Champions champions;
  std::uint64_t regimes_valued = 0;
  bool finished = true;  // false: the stop token ended it
};

// Values every regime of the lattice with the plain evaluator's own steps; regimes
// share the years before they part. The baseline and the twin of every faster search.
SearchOutcome search_exhaustively(const CaseKernel& kernel, const LatticeRules& rules,
                                  const StandOptions& options);

// The same answer without valuing the harvests of thinned stands whose bound is below all
// that is asked for.
SearchOutcome search_by_table_bounds(const CaseKernel& kernel, const LatticeRules& rules,
                                     const StandOptions& options);

}  // namespace staddle
