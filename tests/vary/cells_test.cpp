// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "staddle/base/random.h"
#include "staddle/optimise/solve.h"
#include "support/near.h"
#include "support/seed.h"
#include "vary/one_at_a_time.h"
#include "vary/vary_fixture.h"

namespace staddle::vary_tests {
namespace {

PriceScenario scaled(const VaryProblem& problem, const std::string& name, double factor) {
  PriceScenario scenario{name, {}};
  for (const ProductPrice& price : problem.stand.stand_case.prices) {
    scenario.stumpage.push_back(price.stumpage * factor);
  }
  return scenario;
}

VaryProblem with_cells(VaryProblem problem) {
  problem.question.rates = {DiscountRate::real(0.04), DiscountRate::real(0.06)};
  problem.question.price_scenarios = {scaled(problem, "low", 0.7), scaled(problem, "high", 1.4)};
  problem.question.price_scenarios[1].weight = 3;
  problem.stated = {{"leave it", {}, age(30)},
                    {"open it",
                     {{age(17), StatedThinning::By::residual_basal_area, 0,
                       square_feet_per_acre(70), {}}},
                     age(32)}};
  return problem;
}

VaryOptions options(VaryOptions::Method method, unsigned threads = 0) {
  VaryOptions varying;
  varying.method = method;
  varying.threads = threads;
  return varying;
}

// The stand of one cell, as one would ask for it alone.
StandProblem alone(const VaryProblem& problem, const StandProblem& stand, const VaryCell& cell,
                   const VarySolution& solution) {
  StandProblem single = stand;
  single.stand_case.costs.rate = cell.rate;
  for (std::size_t i = 0; i < problem.products.size(); ++i) {
    single.stand_case.prices[i].stumpage =
        solution.price_scenarios[cell.price_scenario].stumpage[i];
  }
  return single;
}

StandCase stand_of_cell(const VaryProblem& problem, const VaryCell& cell,
                        const VarySolution& solution) {
  StandCase stand = alone(problem, problem.stand, cell, solution).stand_case;
  if (problem.successor) {
    const auto successor = solve(alone(problem, *problem.successor, cell, solution));
    stand.land_value = successor.best.value.objective;
  }
  return stand;
}

void check_same(const VaryAnswer& a, const VaryAnswer& b) {
  REQUIRE(a.best.has_value() == b.best.has_value());
  if (!a.best) return;
  CHECK(same_regime(a.best->regime, b.best->regime));
  CHECK(a.best->value.objective == b.best->value.objective);
  CHECK(a.best->value.net_present_value == b.best->value.net_present_value);
  CHECK(a.land_value == b.land_value);
}

std::vector<VaryProblem> all_kinds() {
  return {bare_land(), standing_stand(), with_storms(bare_land()), with_storms(standing_stand())};
}

}  // namespace

TEST_CASE("each cell holds the optimum of a search of its own") {
  for (const VaryProblem& plain : all_kinds()) {
    const VaryProblem problem = with_cells(plain);
    const VarySolution solution = vary(problem).value();
    REQUIRE(solution.cells.size() == 6);
    CHECK(solution.price_scenarios.front().name == "base");
    for (const VaryCell& cell : solution.cells) {
      StandProblem single = alone(problem, problem.stand, cell, solution);
      single.stand_case.land_value = stand_of_cell(problem, cell, solution).land_value;
      const StandSolution expected = solve(single);
      REQUIRE(cell.answer.best);
      CHECK(same_regime(cell.answer.best->regime, expected.best.regime));
      CHECK(cell.answer.best->value.objective == expected.best.value.objective);
    }
  }
}

TEST_CASE("a loss is the cell's best less the regime held") {
  for (const VaryProblem& plain : all_kinds()) {
    const VaryProblem problem = with_cells(plain);
    const VarySolution solution = vary(problem).value();
    REQUIRE(solution.regimes.size() == 3);
    CHECK(solution.regimes[0].name == "base optimum");
    for (const RegimeLosses& row : solution.regimes) {
      double worst = -1e300, weighed = 0, weights = 0;
      for (std::size_t i = 0; i < solution.cells.size(); ++i) {
        const VaryCell& cell = solution.cells[i];
        const double held =
            usd_ac(evaluate(stand_of_cell(problem, cell, solution), row.regime).objective);
        const double loss = usd_ac(*cell.answer.value()) - held;
        CHECK(usd_ac(*row.loss[i]) == support::within(loss, 1e-9));
        const double weight = cell.price_scenario == 2 ? 3 : 1;
        worst = std::max(worst, loss);
        weighed += weight * loss;
        weights += weight;
      }
      CHECK(usd_ac(*row.worst) == support::within(worst, 1e-9));
      CHECK(usd_ac(*row.mean) == support::within(weighed / weights, 1e-9));
      CHECK(*solution.regimes[*solution.least_worst_loss].worst <= *row.worst);
      CHECK(*solution.regimes[*solution.best_on_average].mean <= *row.mean);
    }
    // Within the lattice nothing beats a cell's best.
    for (const auto& loss : solution.regimes[0].loss) CHECK(usd_ac(*loss) >= -1e-9);
  }
}

TEST_CASE("pooled answers equal separate ones to the last bit on 120 random price sets") {
  const support::TaggedSeed seed("pooled cells");
  std::uint64_t number = 0;
  for (const VaryProblem& plain : all_kinds()) {
    RandomStream random = seed.stream(number++);
    VaryProblem problem = plain;
    // The pool pays only for many cells on a small lattice.
    problem.stand.lattice.thinning_to = age(20);
    if (problem.successor) problem.successor->lattice.thinning_to = age(20);
    for (int i = 0; i < 120; ++i) {
      PriceScenario scenario{"draw " + std::to_string(i), {}};
      for (const ProductPrice& price : problem.stand.stand_case.prices) {
        scenario.stumpage.push_back(price.stumpage * (0.5 + random.next_uniform()));
      }
      problem.question.price_scenarios.push_back(std::move(scenario));
    }
    const VarySolution pooled = vary(problem).value();
    const VarySolution separate = vary(problem, options(VaryOptions::Method::separate)).value();
    REQUIRE(pooled.cells.size() == separate.cells.size());
    for (std::size_t i = 0; i < pooled.cells.size(); ++i) {
      check_same(pooled.cells[i].answer, separate.cells[i].answer);
    }
  }
}

TEST_CASE("one thread and two give the same answers") {
  const VaryProblem problem = with_cells(with_storms(standing_stand()));
  const VarySolution one = vary(problem, options(VaryOptions::Method::automatic, 1)).value();
  const VarySolution two = vary(problem, options(VaryOptions::Method::automatic, 2)).value();
  for (std::size_t i = 0; i < one.cells.size(); ++i) {
    check_same(one.cells[i].answer, two.cells[i].answer);
    CHECK(one.regimes[2].loss[i] == two.regimes[2].loss[i]);
  }
}

TEST_CASE("a lattice without a regime leaves every cell empty and gives the reason") {
  VaryProblem problem = with_cells(bare_land());
  problem.stand.lattice.final_from = age(400);
  problem.stand.lattice.final_to = age(410);
  const VarySolution solution = vary(problem).value();
  for (const VaryCell& cell : solution.cells) {
    CHECK_FALSE(cell.answer.best);
    CHECK_FALSE(cell.answer.reason.empty());
  }
  CHECK_FALSE(solution.least_worst_loss);
  for (const BreakEven& entry : solution.break_evens) {
    CHECK_FALSE(entry.value);
    CHECK_FALSE(entry.reason.empty());
  }
}

TEST_CASE("an impossible stated regime is a fault at its pointer") {
  VaryProblem problem = bare_land();
  problem.stated = {{"fine", {}, age(30)}, {"beyond every table", {}, age(400)}};
  const auto result = vary(problem);
  REQUIRE_FALSE(result);
  CHECK(result.error().front().place.starts_with("/regimes/1/"));
}

}  // namespace staddle::vary_tests
