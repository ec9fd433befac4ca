// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/optimise/solve.h"
#include "staddle/regime/after_tax.h"

#include <catch2/catch.hpp>

#include "support/near.h"
#include "vary/vary_fixture.h"

namespace staddle::vary_tests {
namespace {

VaryProblem taxed(VaryProblem problem) {
  problem.tax = TaxRules{};
  problem.tax->basis = dollars_per_acre(250);
  problem.question.rates = {DiscountRate::real(0.05), DiscountRate::real(0.07)};
  problem.question.price_scenarios = {
      {"low", {dollars_per_ton(15), dollars_per_ton(12), dollars_per_ton(5)}}};
  problem.stated = {{"uncut", {}, age(30)}};
  return problem;
}

// The land and the stand of a cell, taxed as one stand is.
AfterTax tax_of(const VaryProblem& problem, const VarySolution& solution, const VaryCell& cell) {
  const auto set = [&](StandCase stand) {
    stand.costs.rate = cell.rate;
    const auto& prices = solution.price_scenarios[cell.price_scenario].stumpage;
    for (std::size_t i = 0; i < prices.size(); ++i) stand.prices[i].stumpage = prices[i];
    return stand;
  };
  MoneyPerAcre land;
  if (cell.answer.successor) {
    const AfterTax successor(set(problem.successor->stand_case), *problem.tax,
                             problem.successor->acres);
    land = successor.value(cell.answer.successor->regime).objective;
  }
  return AfterTax(set(problem.stand.stand_case), *problem.tax, problem.stand.acres, land);
}

TEST_CASE("every cell and every loss after tax is that of the stand taxed alone") {
  for (const VaryProblem& problem : {taxed(bare_land()), taxed(standing_stand())}) {
    const VarySolution solution = vary(problem).value();
    REQUIRE(solution.cells.size() == 4);
    for (std::size_t i = 0; i < solution.cells.size(); ++i) {
      const VaryCell& cell = solution.cells[i];
      const AfterTax tax = tax_of(problem, solution, cell);
      const double best = usd_ac(tax.value(cell.answer.best->regime).objective);
      CHECK(usd_ac(*cell.answer.value_after_tax()) == support::relative(best, support::round_off));
      for (const RegimeLosses& row : solution.regimes) {
        const double held = usd_ac(tax.value(row.regime).objective);
        CHECK(usd_ac(*row.after_tax->loss[i]) == support::within(best - held, 1e-9));
      }
    }
  }
}

TEST_CASE("tax moves where the land is worth nothing and not where the plan turns") {
  const VaryProblem problem = taxed(bare_land());
  const VarySolution solution = vary(problem).value();
  int moved = 0;
  for (const BreakEven& entry : solution.break_evens) {
    CAPTURE(entry.what, entry.parameter);
    REQUIRE(entry.after_tax.has_value());
    if (entry.what.find("land expectation") == std::string::npos) {
      CHECK(entry.after_tax->value == entry.value);
    } else if (entry.parameter == "establishment_usd_ac") {
      // Bare land has no basis; planting is deducted, so the land can bear another cost.
      const auto worth_at = [&](double cost) {
        StandProblem stand = problem.stand;
        stand.stand_case.costs.establishment = dollars_per_acre(cost);
        const Regime best = solve(stand).best.regime;
        return usd_ac(AfterTax(stand.stand_case, *problem.tax, stand.acres).value(best).objective);
      };
      const auto& bracket = *entry.after_tax->bracket;
      CHECK(worth_at(bracket[0]) >= 0.0);
      CHECK(worth_at(bracket[1]) < 0.0);
      ++moved;
    }
  }
  CHECK(moved == 1);
}

TEST_CASE("without tax rules no answer has money after tax") {
  VaryProblem problem = taxed(bare_land());
  problem.tax.reset();
  const VarySolution solution = vary(problem).value();
  CHECK_FALSE(solution.cells.front().answer.after_tax);
  CHECK_FALSE(solution.regimes.front().after_tax);
  CHECK_FALSE(solution.break_evens.front().after_tax);
}

}  // namespace
}  // namespace staddle::vary_tests
