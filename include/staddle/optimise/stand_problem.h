// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/optimise/decision_lattice.h"
#include "staddle/regime/stand_case.h"

namespace staddle {

// maximise   LEV(r) = alpha(r) / (1 - beta(r))            bare land
//            alpha(r) + beta(r) x land value              standing
// over the regimes r of the lattice that keep every limit, alpha and beta as the
// evaluator gives them (regime/simulate.h).
struct StandProblem {
  StandCase stand_case;
  DecisionLattice lattice;
  Area acres = staddle::acres(1);  // for limits on a whole sale
};

}  // namespace staddle
