// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "vary/answers.h"

namespace staddle {

// Loss by cell of one regime, and the worst and the mean of them. `circumstances`: of the
// cells, in their order.
RegimeLosses losses_of(const VaryProblem& problem, const VaryOptions& options,
                       const VarySolution& solution,
                       const std::vector<Circumstances>& circumstances, std::string name,
                       const Regime& regime);

// Fills in which regime has the least worst loss and which the least mean; the first of
// those that tie.
void choose_regimes(VarySolution& solution);

}  // namespace staddle
