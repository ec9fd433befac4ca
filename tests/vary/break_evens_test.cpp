// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>

#include "staddle/optimise/solve.h"
#include "support/near.h"
#include "vary/vary_fixture.h"

namespace staddle::vary_tests {
namespace {

const BreakEven& entry_of(const VarySolution& solution, const std::string& parameter,
                          const std::string& begins) {
  for (const BreakEven& entry : solution.break_evens) {
    if (entry.parameter == parameter && entry.what.starts_with(begins)) return entry;
  }
  throw ContractViolation("no break-even " + begins + " of " + parameter);
}

// The stand with one figure set absolutely.
StandProblem with(const VaryProblem& problem, const std::string& parameter, double value) {
  StandProblem single = problem.stand;
  StandCase& stand = single.stand_case;
  if (parameter == "real_discount_rate") stand.costs.rate = DiscountRate::real(value);
  if (parameter == "establishment_usd_ac") stand.costs.establishment = dollars_per_acre(value);
  for (std::size_t i = 0; i < problem.products.size(); ++i) {
    if (problem.products[i] == parameter) stand.prices[i].stumpage = dollars_per_ton(value);
    if (parameter == "thinning_price_factor") stand.prices[i].thinning_factor = value;
  }
  return single;
}

double lev(const VaryProblem& problem, const std::string& parameter, double value) {
  return usd_ac(solve(with(problem, parameter, value)).best.value.objective);
}

std::size_t thinnings(const VaryProblem& problem, const std::string& parameter, double value) {
  return solve(with(problem, parameter, value)).best.regime.thinnings.size();
}

}  // namespace

TEST_CASE("every break-even is bracketed by one step at whose ends the thing differs") {
  const VaryProblem problem = bare_land();
  const VarySolution solution = vary(problem).value();
  int found = 0;
  for (const BreakEven& entry : solution.break_evens) {
    CAPTURE(entry.what, entry.parameter);
    if (!entry.value) {
      CHECK(entry.reason.starts_with("none in range"));
      continue;
    }
    ++found;
    const auto [low, high] = *entry.bracket;
    const double step =
        entry.unit == "$/ton" || entry.unit == "$/ac" ? 0.01 : 0.0001;
    CHECK(high - low <= step * (1 + 1e-6));
    CHECK((*entry.value == low || *entry.value == high));
    if (entry.what.starts_with("the land expectation value is 0")) {
      const double at_low = lev(problem, entry.parameter, low);
      const double at_high = lev(problem, entry.parameter, high);
      CHECK((at_low >= 0) != (at_high >= 0));
    } else if (entry.what.starts_with("the final harvest moves")) {
      CHECK(solve(with(problem, entry.parameter, low)).best.regime.final_harvest !=
            solve(with(problem, entry.parameter, high)).best.regime.final_harvest);
    } else {
      CHECK((thinnings(problem, entry.parameter, low) == 0) !=
            (thinnings(problem, entry.parameter, high) == 0));
    }
  }
  CHECK(found >= 6);
}

TEST_CASE("the rate at which land is worth nothing is the return of the best plan there") {
  const VaryProblem problem = bare_land();
  const VarySolution solution = vary(problem).value();
  const BreakEven& entry = entry_of(solution, "real_discount_rate", "the land expectation");
  REQUIRE(entry.value);
  const StandProblem there = with(problem, "real_discount_rate", *entry.value);
  const Regime best = solve(there).best.regime;
  const double irr =
      *simulate(there.stand_case, stated("best", best)).value().internal_rate_of_return;
  CHECK(irr == support::within(*entry.value, 1e-4));
}

TEST_CASE("establishment that land can bear exceeds today's by the worth of one rotation") {
  // LEV falls by 1/(1 - beta) of each dollar while the plan stays, so the first-order
  // answer is exact to where the plan changes.
  const VaryProblem problem = bare_land();
  const VarySolution solution = vary(problem).value();
  const BreakEven& entry = entry_of(solution, "establishment_usd_ac", "the land expectation");
  REQUIRE(entry.value);
  CHECK(std::fabs(lev(problem, "establishment_usd_ac", *entry.value)) < 0.02);
  const double npv = usd_ac(solution.base.best->value.net_present_value);
  CHECK(*entry.value >= 350 + npv - 0.01);
}

TEST_CASE("of a standing stand the land that follows breaks even") {
  const VaryProblem problem = standing_stand();
  const VaryProblem bare = bare_land();
  const VarySolution solution = vary(problem).value();
  const VarySolution solution_of_bare = vary(bare).value();
  for (const std::string name : {"real_discount_rate", "establishment_usd_ac"}) {
    CHECK(*entry_of(solution, name, "the land expectation").value ==
          *entry_of(solution_of_bare, name, "the land expectation").value);
  }
}

TEST_CASE("land of a given price has no break-even of its worth") {
  VaryProblem problem = standing_stand();
  problem.successor.reset();
  problem.land_value = [](std::optional<MoneyPerAcre>) { return dollars_per_acre(500); };
  const VarySolution solution = vary(problem).value();
  const BreakEven& entry = entry_of(solution, "real_discount_rate", "the land expectation");
  CHECK_FALSE(entry.value);
  CHECK(entry.reason == "what the land is worth under pine is not known here");
}

}  // namespace staddle::vary_tests
