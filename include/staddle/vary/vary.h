// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/base/result.h"
#include "staddle/vary/vary_options.h"
#include "staddle/vary/vary_problem.h"
#include "staddle/vary/vary_solution.h"

namespace staddle {

// Solves the stand again under every circumstance asked for: a table of rates and price
// scenarios, what each regime would lose in each of them, one parameter at a time, two at
// a time, and the values at which the advice turns. Every answer is exactly what an
// independent search of the lattice gives, tie rule included; the same to the bit for any
// number of threads. Faults: a stated regime that is impossible (at "/regimes/i/...").
Result<VarySolution> vary(const VaryProblem& problem, const VaryOptions& options = {});

}  // namespace staddle
