// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "staddle/advise/advice.h"
#include "staddle/advise/advise.h"
#include "staddle/base/result.h"
#include "staddle/scenario/scenario.h"

namespace staddle {

// The whole question of a scenario that the reader accepted. A list of tables of fixed
// regimes leaves nothing to decide but which of them, and the final age.
Result<AdviseProblem> make_advise_problem(const Scenario& scenario);

// All that an answer assumes: what the file left to its defaults, then what only the
// answer could show (a number of thinnings that no regime of the lattice has, a limit
// that shuts cuts), each with the key it concerns.
std::vector<Assumption> assumptions_of(const Scenario& scenario, const Advice& advice);

}  // namespace staddle
