// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "staddle/optimise/stand_options.h"
#include "staddle/optimise/stand_problem.h"
#include "staddle/optimise/stand_solution.h"

namespace staddle {

// The best regime of the lattice, exactly. Values that tie (tolerance::tie) go to
// the regime with fewer entries, then smaller removals from left to right, then the
// earlier final harvest, then earlier ages from left to right. Both methods give the
// same regime; its value always comes from the plain evaluator.
StandSolution solve(const StandProblem& problem, const StandOptions& options = {});

// Why no age is left for a final harvest; nothing where one is. Then every problem has a
// regime: the stand may always be left uncut up to it.
std::optional<std::string> no_final_harvest_age(const StandProblem& problem);

// What stands as the limit of a stated thinning whose residual the stand has not reached:
// nothing was cut, and no number was broken.
inline constexpr const char* residual_not_reached = "a residual the stand has not reached";

// Limits that a regime breaks; empty for a regime of the lattice.
struct BrokenLimit {
  std::string limit;    // the key of the limit, "guards/min_height_ft"
  double value = 0.0;   // in the limit's unit
  double allowed = 0.0;
};
std::vector<BrokenLimit> broken_limits(const StandProblem& problem, const RegimeReport& regime);

// How many first cuts of the lattice, over all ages and removals of the unthinned
// stand, only the one-ton rule forbids (no product may stand more than a ton per acre
// higher after a cut than before it).
int first_cuts_shut_by_one_ton_rule(const StandProblem& problem);

// Where a limit on tons forbids to thin the unthinned stand now: the first age at which
// the largest removal allowed meets it, whatever other limits say. Absent where there is
// no such limit, where it is met now, and where it is never met.
std::optional<Age> first_age_of_a_sale(const StandProblem& problem);

}  // namespace staddle
