// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "support/near.h"
#include "vary/price_percentiles.h"
#include "vary/vary_fixture.h"

namespace staddle::vary_tests {
namespace {

std::vector<DatedPrices> dates() {
  const auto prices = [](double a, double b) {
    return std::vector<Price>{dollars_per_ton(a), dollars_per_ton(b)};
  };
  return {{"2020-01-01", prices(10, 9)},
          {"2021-01-01", prices(20, 7)},
          {"2022-01-01", prices(30, 5)},
          {"2023-01-01", prices(40, 3)},
          {"2024-01-01", prices(50, 1)}};
}

double usd_per_ton(const PriceScenario& scenario, std::size_t product) {
  return scenario.stumpage[product].in(dollars_per_ton);
}

}  // namespace

TEST_CASE("percentiles by product interpolate between dates") {
  const auto scenarios = percentiles_by_product(dates());
  REQUIRE(scenarios.size() == 5);
  CHECK(scenarios[0].name == "p10");
  // Five dates: h = 4 x 0.10 = 0.4 of the way from the first to the second.
  CHECK(usd_per_ton(scenarios[0], 0) == support::relative(14, 1e-12));
  CHECK(usd_per_ton(scenarios[0], 1) == support::relative(1.8, 1e-12));
  CHECK(usd_per_ton(scenarios[2], 0) == 30);
  CHECK(usd_per_ton(scenarios[4], 1) == support::relative(8.2, 1e-12));
}

TEST_CASE("joint percentiles rank dates by what the tons would have sold for") {
  // Ten tons of the second product to one of the first: 100, 90, 80, 70, 60 by date.
  const auto scenarios = joint_percentiles(dates(), {tons_per_acre(1), tons_per_acre(10)});
  REQUIRE(scenarios.size() == 5);
  CHECK(scenarios[1].name == "joint p25");
  CHECK(usd_per_ton(scenarios[1], 0) == 40);
  CHECK(usd_per_ton(scenarios[1], 1) == 3);
  CHECK(usd_per_ton(scenarios[0], 0) == support::relative(46, 1e-12));
  // Tons of the first alone turn the order around.
  const auto turned = joint_percentiles(dates(), {tons_per_acre(1), tons_per_acre(0)});
  CHECK(usd_per_ton(turned[1], 0) == 20);
}

TEST_CASE("one date is every percentile") {
  const std::vector<DatedPrices> one = {dates().front()};
  for (const PriceScenario& scenario : percentiles_by_product(one)) {
    CHECK(usd_per_ton(scenario, 0) == 10);
  }
  const std::vector<Yield> tons = {tons_per_acre(1), tons_per_acre(1)};
  for (const PriceScenario& scenario : joint_percentiles(one, tons)) {
    CHECK(usd_per_ton(scenario, 1) == 9);
  }
}

TEST_CASE("dated prices add ten scenarios behind those stated") {
  VaryProblem problem = bare_land();
  problem.question.dated_prices = {
      {"2020-01-01", {dollars_per_ton(20), dollars_per_ton(15), dollars_per_ton(6)}},
      {"2024-01-01", {dollars_per_ton(30), dollars_per_ton(20), dollars_per_ton(9)}}};
  problem.question.price_scenarios = {
      {"own", {dollars_per_ton(1), dollars_per_ton(2), dollars_per_ton(3)}}};
  const VarySolution solution = vary(problem).value();
  REQUIRE(solution.price_scenarios.size() == 12);
  CHECK(solution.price_scenarios[1].name == "own");
  CHECK(solution.price_scenarios[2].name == "p10");
  CHECK(solution.price_scenarios[7].name == "joint p10");
  CHECK(solution.cells.size() == 12);
}

}  // namespace staddle::vary_tests
