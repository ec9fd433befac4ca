// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/optimise/prove.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "dp/solve.h"
#include "lp/solve.h"
#include "optimise/state_graph.h"
#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

// Counting stops here; the lattice is then said to be larger.
constexpr std::size_t most_counted_states = 50'000;

std::size_t count_states(const StandProblem& problem, std::size_t most) {
  const CaseKernel kernel(problem.stand_case);
  const LatticeRules rules(problem, kernel);
  return make_state_graph(kernel, rules, 0.0, most).process.states;
}

// Every n-th removal, from the smallest.
StandProblem with_coarser_removals(const StandProblem& problem, std::size_t n) {
  StandProblem coarser = problem;
  std::vector<double>& removals = coarser.lattice.removal_fractions;
  std::vector<double> kept;
  for (std::size_t i = 0; i < removals.size(); i += n) kept.push_back(removals[i]);
  removals = kept;
  return coarser;
}

Fault too_large(const StandProblem& problem) {
  const std::size_t states = count_states(problem, most_counted_states);
  Fault fault{FaultCode::out_of_range, "", "/decisions", "", ""};
  fault.text =
      fmt::format("found a lattice of {}{} states, allowed for a proof by linear program: {}",
                  states >= most_counted_states ? "more than " : "", states, most_proof_states);
  const std::size_t removals = problem.lattice.removal_fractions.size();
  for (std::size_t n = 2; n < 2 * removals; ++n) {
    const StandProblem coarser = with_coarser_removals(problem, n);
    const std::size_t left = count_states(coarser, most_proof_states + 1);
    if (left > most_proof_states) continue;
    fault.hint = fmt::format("one removal in {}, {} of {}, leaves {} states and fits", n,
                             coarser.lattice.removal_fractions.size(), removals, left);
    return fault;
  }
  fault.hint = "fewer thinnings or a narrower span of thinning ages would fit";
  return fault;
}

lp::LinearProgram occupancy_program(const dp::DecisionProcess& process) {
  lp::LinearProgram program;
  program.direction = lp::Direction::maximise;
  for (std::size_t state = 0; state < process.states; ++state) {
    const double entering = state == 0 ? 1.0 : 0.0;
    program.add_row({entering, entering});
  }
  for (const dp::Action& action : process.actions) {
    double leaving = 1.0;
    std::vector<lp::Term> terms;
    for (const dp::Transition& transition : action.transitions) {
      if (transition.next_state == action.state) {
        leaving -= transition.weight;
      } else {
        terms.push_back({transition.next_state, -transition.weight});
      }
    }
    terms.push_back({action.state, leaving});
    program.add_column({action.reward}, terms);
  }
  return program;
}

// The largest difference between a state's value and its row's dual, over the states
// that the optimal plan visits; elsewhere the duals are free to differ.
double largest_difference(const dp::DecisionProcess& process, const dp::Solution& by_dp,
                          const lp::Solution& by_lp) {
  double largest = 0.0;
  for (std::size_t i = 0; i < process.actions.size(); ++i) {
    if (by_lp.columns[i] <= tolerance::lp_absolute) continue;
    const std::size_t state = process.actions[i].state;
    largest = std::max(largest, std::fabs(by_dp.values[state] - by_lp.duals[state]));
  }
  return largest;
}

}  // namespace

std::optional<Fault> refusal_to_prove(const StandProblem& problem) {
  if (count_states(problem, most_proof_states + 1) <= most_proof_states) return std::nullopt;
  return too_large(problem);
}

Result<Proof> prove(const StandProblem& problem, const StandSolution& solution) {
  require(solution.status == StandSolution::Status::optimal, "only an optimum can be proved");
  require(!problem.stand_case.basis, "no state knows how much of a tax basis is left");
  const CaseKernel kernel(problem.stand_case);
  const LatticeRules rules(problem, kernel);
  const StateGraph graph = make_state_graph(
      kernel, rules, problem.stand_case.land_value.in(dollars_per_acre), most_proof_states);
  if (!graph.complete) return Faults{too_large(problem)};
  // A standing stand never comes back to its start, and may be cut at once, undiscounted.
  const dp::Solution by_dp =
      kernel.standing() ? dp::solve_acyclic(graph.process) : dp::solve_discounted(graph.process);
  lp::Options options;
  options.simplex = lp::Simplex::primal;
  options.presolve = true;
  const lp::Solution by_lp = lp::solve(occupancy_program(graph.process), options);

  Proof proof;
  proof.states = graph.process.states;
  proof.choices = graph.process.actions.size();
  proof.linear_program_status = by_lp.message;
  proof.by_optimiser = solution.best.value.objective;
  if (by_dp.status != dp::Status::optimal || by_lp.status != lp::Status::optimal) return proof;
  proof.by_dynamic_programming = dollars_per_acre(by_dp.values[0]);
  proof.by_linear_program = dollars_per_acre(by_lp.value);
  proof.by_dual = dollars_per_acre(by_lp.duals[0]);
  proof.largest_dual_difference = dollars_per_acre(largest_difference(graph.process, by_dp, by_lp));
  const double value = proof.by_optimiser.in(dollars_per_acre);
  const double allowed = tolerance::proof_agreement * std::max(1.0, std::fabs(value));
  const auto close = [&](MoneyPerAcre other) {
    return std::fabs(other.in(dollars_per_acre)-value) <= allowed;
  };
  proof.agrees = close(proof.by_dynamic_programming) && close(proof.by_linear_program) &&
                 close(proof.by_dual) &&
                 proof.largest_dual_difference.in(dollars_per_acre) <= allowed;
  return proof;
}

}  // namespace staddle
