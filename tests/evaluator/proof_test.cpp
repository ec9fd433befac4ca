// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "published/stand_fixture.h"
#include "staddle/optimise/prove.h"
#include "staddle/optimise/solve.h"

namespace staddle {
namespace {

using published::bare_land;
using published::equations;

StandProblem small_problem() {
  StandProblem problem{bare_land(equations("loblolly-planted-coastal"), 70, 600), {}};
  DecisionLattice& lattice = problem.lattice;
  lattice.max_thinnings = 2;
  lattice.thinning_from = age(14);
  lattice.thinning_to = age(24);
  lattice.removal_fractions = {0.25, 1.0 / 3.0};
  lattice.final_from = age(22);
  lattice.final_to = age(36);
  return problem;
}

Peril gale() {
  Peril peril;
  peril.name = "gale";
  peril.annual_probability = 0.02;
  peril.logistic = LogisticShare{0.3, feet(60), 0.4, 0.2, 3.0, true, 0.0};
  peril.salvage_share = 0.3;
  peril.cleanup = dollars_per_acre(150);
  return peril;
}

void check_proof(const StandProblem& problem) {
  const StandSolution solution = solve(problem);
  REQUIRE(solution.status == StandSolution::Status::optimal);
  const Result<Proof> proof = prove(problem, solution);
  REQUIRE(proof.has_value());
  CAPTURE(proof->linear_program_status, proof->states, proof->choices);
  CAPTURE(proof->by_optimiser.in(dollars_per_acre),
          proof->by_dynamic_programming.in(dollars_per_acre),
          proof->by_linear_program.in(dollars_per_acre), proof->by_dual.in(dollars_per_acre));
  CHECK(proof->agrees);
  CHECK(proof->states > 1);
}

TEST_CASE("linear program and its dual and dynamic program and optimiser agree on bare land") {
  check_proof(small_problem());
}

TEST_CASE("the four roads agree when storms send acres back to bare land") {
  StandProblem problem = small_problem();
  problem.stand_case.hazard.perils = {gale()};
  check_proof(problem);
}

TEST_CASE("the four roads agree on a standing stand and its land value") {
  StandProblem problem = small_problem();
  MeasuredStand stand;
  stand.at = age(16);
  stand.trees = trees_per_acre(520);
  stand.basal_area = square_feet_per_acre(128);
  problem.stand_case.standing = stand;
  problem.stand_case.land_value = dollars_per_acre(380);
  check_proof(problem);
  problem.stand_case.hazard.perils = {gale()};
  check_proof(problem);
}

TEST_CASE("a value that is not the optimum is not proved") {
  const StandProblem problem = small_problem();
  StandSolution wrong = solve(problem);
  wrong.best.value.objective += dollars_per_acre(0.01);
  CHECK_FALSE(prove(problem, wrong)->agrees);
}

TEST_CASE("a lattice too large for the linear program is refused with a step that fits") {
  StandProblem problem = small_problem();
  problem.lattice.thinning_from = age(12);
  problem.lattice.thinning_to = age(35);
  problem.lattice.final_to = age(45);
  problem.lattice.removal_fractions.clear();
  for (int i = 0; i <= 15; ++i) problem.lattice.removal_fractions.push_back(0.20 + 0.01 * i);
  const StandSolution solution = solve(problem);
  const Result<Proof> proof = prove(problem, solution);
  REQUIRE_FALSE(proof.has_value());
  CHECK(proof.error().front().text.find("5000") != std::string::npos);
  CHECK(proof.error().front().hint.find("fits") != std::string::npos);
}

}  // namespace
}  // namespace staddle
