// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "staddle/base/result.h"
#include "staddle/optimise/stand_problem.h"
#include "staddle/optimise/stand_solution.h"

namespace staddle {

// A second road to the optimum, by other mathematics: the lattice as a graph of states
// (bare land or the present stand, and the stand just after each possible cut), solved
// once by dynamic programming and once as a linear program over how often each choice is
// taken:
//
//   maximise    sum over choices of reward x
//   subject to  for every state s: sum of x leaving s - sum of weight x entering s
//               = 1 where the stand starts, else 0;   x >= 0
//
// Rewards are dollars at the state's age per acre that stands; a weight is the discount
// factor times the share that storms leave. On bare land every harvest, and every acre
// that a storm takes, leads back to the start, so the value there is the land
// expectation value; on a standing stand they pay the land's value. The duals of the
// rows are the values of the states.
struct Proof {
  std::size_t states = 0;
  std::size_t choices = 0;
  MoneyPerAcre by_dynamic_programming;  // value where the stand starts
  MoneyPerAcre by_linear_program;       // objective
  MoneyPerAcre by_dual;                 // dual of the start
  MoneyPerAcre by_optimiser;
  MoneyPerAcre largest_dual_difference; // between duals and values of visited states
  std::string linear_program_status;
  bool agrees = false;  // the four within proof_agreement, and the audit was passed
};

// The graph may have this many states.
inline constexpr std::size_t most_proof_states = 5000;

// The fault of a lattice with more states than that: it names their number and the
// coarser step that fits. Cheap: ask it before solving.
std::optional<Fault> refusal_to_prove(const StandProblem& problem);

// Proves an optimal solution of solve(); the fault of refusal_to_prove where there is one.
// REQUIRES: solution.status is optimal; a case without a tax basis, which the states do not
// know.
Result<Proof> prove(const StandProblem& problem, const StandSolution& solution);

}  // namespace staddle
