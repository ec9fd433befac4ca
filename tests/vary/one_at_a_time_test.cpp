// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "staddle/optimise/solve.h"
#include "support/near.h"
#include "vary/one_at_a_time.h"
#include "vary/vary_fixture.h"

namespace staddle::vary_tests {
namespace {

const OneAtATime& row_of(const VarySolution& solution, const std::string& name) {
  for (const OneAtATime& row : solution.one_at_a_time) {
    if (row.span.parameter.name == name) return row;
  }
  throw ContractViolation("no row " + name);
}

VaryProblem with_spans(VaryProblem problem) {
  const auto add = [&](const char* name, double low, double high) {
    problem.question.one_at_a_time.push_back({parameter(problem, name), low, high});
  };
  add("sawtimber", -0.4, 0.4);
  add("establishment_usd_ac", -0.5, 0.5);
  add("annual_cost_usd_ac", -1, 1);
  add("real_discount_rate", 0.03, 0.09);
  add("site_index_ft", 60, 80);
  add("planted_tpa", 400, 800);
  add("thinning_price_factor", 0.2, 1.1);
  add("growth_multiplier", 0.8, 1.2);
  return problem;
}

}  // namespace

TEST_CASE("re-optimising is never worse than holding the plan") {
  for (const VaryProblem& plain : {bare_land(), standing_stand(), with_storms(bare_land())}) {
    const VarySolution solution = vary(with_spans(plain)).value();
    REQUIRE(solution.one_at_a_time.size() == 8);
    for (const OneAtATime& row : solution.one_at_a_time) {
      CAPTURE(row.span.parameter.name);
      for (const std::size_t end : {0u, 1u}) {
        const double held = usd_ac(*row.plan_held[end]);
        const double anew = usd_ac(*row.reoptimised[end].value());
        CHECK(anew >= held - 1e-9);
        if (!row.plan_changes[end]) CHECK(held == support::relative(anew, 1e-12));
      }
    }
  }
}

TEST_CASE("rows stand by swing and the largest is first") {
  const VarySolution solution = vary(with_spans(bare_land())).value();
  for (std::size_t i = 1; i < solution.one_at_a_time.size(); ++i) {
    CHECK(*solution.one_at_a_time[i - 1].swing() >= *solution.one_at_a_time[i].swing());
  }
}

TEST_CASE("each parameter sets the figure that it names") {
  const VaryProblem problem = with_spans(bare_land());
  const VarySolution solution = vary(problem).value();
  const auto expect = [&](const std::string& name, std::size_t end, auto change) {
    StandProblem single = problem.stand;
    change(single.stand_case);
    CAPTURE(name);
    CHECK(*row_of(solution, name).reoptimised[end].value() == solve(single).best.value.objective);
  };
  expect("sawtimber", 0, [](StandCase& s) { s.prices[0].stumpage = s.prices[0].stumpage * 0.6; });
  expect("establishment_usd_ac", 1,
         [](StandCase& s) { s.costs.establishment = dollars_per_acre(525); });
  expect("annual_cost_usd_ac", 0, [](StandCase& s) { s.costs.annual_cost = MoneyPerAcre(); });
  expect("real_discount_rate", 1, [](StandCase& s) { s.costs.rate = DiscountRate::real(0.09); });
  expect("site_index_ft", 1, [&](StandCase& s) {
    s.growth = GrowthModel::from_equations(*problem.equations, feet(80), trees_per_acre(600));
  });
  expect("planted_tpa", 0, [&](StandCase& s) {
    s.growth = GrowthModel::from_equations(*problem.equations, feet(70), trees_per_acre(400));
  });
  expect("thinning_price_factor", 0, [](StandCase& s) {
    for (ProductPrice& price : s.prices) price.thinning_factor = 0.2;
  });
  expect("growth_multiplier", 1, [](StandCase& s) { s.growth_multiplier = 1.2; });
}

TEST_CASE("planted trees of a standing stand count for its successor alone") {
  const VarySolution solution = vary(with_spans(standing_stand())).value();
  const OneAtATime& row = row_of(solution, "planted_tpa");
  const auto held = row.reoptimised[1].best->value.net_present_value;
  if (!row.plan_changes[1]) CHECK(held == solution.base.best->value.net_present_value);
  CHECK(row.reoptimised[1].land_value != solution.base.land_value);
}

TEST_CASE("where a plan is said to change it does within one step") {
  const VaryProblem problem = with_spans(bare_land());
  const VarySolution solution = vary(problem).value();
  int changes = 0;
  for (const OneAtATime& row : solution.one_at_a_time) {
    if (row.span.parameter.name != "real_discount_rate") continue;
    for (const std::size_t end : {0u, 1u}) {
      if (!row.changes_at[end]) continue;
      ++changes;
      const double at = *row.changes_at[end];
      const double back = at + (end == 0 ? 1e-4 : -1e-4);
      for (const auto& [rate, same] : {std::pair{at, false}, std::pair{back, true}}) {
        StandProblem single = problem.stand;
        single.stand_case.costs.rate = DiscountRate::real(rate);
        CHECK(same_regime(solve(single).best.regime, solution.base.best->regime) == same);
      }
    }
  }
  CHECK(changes == 2);
}

TEST_CASE("a grid has a row per y and a column per x") {
  VaryProblem problem = bare_land();
  problem.question.grid =
      GridQuestion{{parameter(problem, "pulpwood"), {-0.5, 0.0, 0.5}},
                   {parameter(problem, "real_discount_rate"), {0.04, 0.07}}};
  const VarySolution solution = vary(problem).value();
  const GridAnswer& grid = *solution.grid;
  REQUIRE(grid.cells.size() == 2);
  REQUIRE(grid.cells[1].size() == 3);
  StandProblem single = problem.stand;
  single.stand_case.costs.rate = DiscountRate::real(0.07);
  single.stand_case.prices[2].stumpage = dollars_per_ton(3.5);
  CHECK(*grid.cells[1][0].value() == solve(single).best.value.objective);
  CHECK(*grid.cells[0][1].value() > *grid.cells[1][1].value());
}

}  // namespace staddle::vary_tests
