// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>

#include "optimise/best_of.h"
#include "optimise/describe.h"
#include "optimise/random_problem.h"
#include "staddle/base/tolerance.h"
#include "support/near.h"
#include "support/seed.h"

namespace staddle::support {
namespace {

PriceList scaled(PriceList prices, double factor) {
  for (ProductPrice& price : prices) {
    price.stumpage = price.stumpage * factor;
    price.thinning_discount = price.thinning_discount * factor;
  }
  return prices;
}

StandProblem with_all_money(StandProblem problem, double factor) {
  StandCase& stand_case = problem.stand_case;
  Costs& costs = stand_case.costs;
  stand_case.prices = scaled(stand_case.prices, factor);
  for (MoneyPerAcre* money :
       {&costs.establishment, &costs.thinning_sale_cost, &costs.final_sale_cost,
        &costs.annual_cost, &costs.annual_income, &stand_case.land_value}) {
    *money = *money * factor;
  }
  for (Practice& practice : costs.practices) practice.cost = practice.cost * factor;
  for (DatedFlow& flow : costs.flows) flow.per_year = flow.per_year * factor;
  for (Peril& peril : stand_case.hazard.perils) peril.cleanup = peril.cleanup * factor;
  if (stand_case.standing) {
    for (OtherTimber& timber : stand_case.standing->other_timber) {
      timber.stumpage = timber.stumpage * factor;
    }
  }
  return problem;
}

}  // namespace

TEST_CASE("more choices are never worth less") {
  const TaggedSeed seed("more choices");
  for (std::uint64_t number = 0; number < 40; ++number) {
    CAPTURE(number);
    RandomStream random = seed.stream(number);
    const StandProblem few = random_problem(random, {.storms = number % 2 == 1});
    StandProblem more = few;
    more.lattice.removal_fractions.push_back(0.37);
    more.lattice.final_to = few.lattice.final_to + years(2);
    more.lattice.thinning_to = few.lattice.thinning_to + years(1);
    more.lattice.guards = {};
    more.lattice.max_thinnings = std::min(2, few.lattice.max_thinnings + 1);
    const StandSolution fewer = solve(few);
    if (fewer.status == StandSolution::Status::no_regime) continue;
    CHECK(at_least(best_of(more), fewer.best.value.objective.in(dollars_per_acre)));
  }
}

TEST_CASE("the value of a fixed regime is linear in final and net thinning prices together") {
  const StandProblem problem = plain_problem();
  const Regime regime{{{age(16), 0.3}, {age(23), 0.25}}, age(34)};
  const auto value_at = [&](double factor, double first, double last) {
    StandCase stand_case = problem.stand_case;
    stand_case.prices = scaled(stand_case.prices, factor);
    stand_case.prices.front().stumpage = stand_case.prices.front().stumpage * first;
    stand_case.prices.back().stumpage = stand_case.prices.back().stumpage * last;
    return evaluate(stand_case, regime).objective.in(dollars_per_acre);
  };
  const double a = value_at(1.0, 1.2, 0.7);
  const double b = value_at(1.0, 0.8, 1.3);
  CHECK(value_at(1.0, 1.0, 1.0) == relative(0.5 * (a + b), round_off));
  CHECK(value_at(1.5, 1.0, 1.0) ==
        relative(1.5 * value_at(1.0, 1.0, 1.0) - 0.5 * value_at(0.0, 1.0, 1.0), round_off));
}

TEST_CASE("doubling all money doubles the land expectation value and keeps the regime") {
  const TaggedSeed seed("doubling");
  for (std::uint64_t number = 0; number < 30; ++number) {
    CAPTURE(number);
    RandomStream random = seed.stream(number);
    const StandProblem problem = random_problem(random, {.storms = number % 2 == 1});
    const StandSolution once = solve(problem);
    if (once.status == StandSolution::Status::no_regime) continue;
    const StandSolution twice = solve(with_all_money(problem, 2.0));
    CHECK(describe(twice.best.regime) == describe(once.best.regime));
    CHECK(twice.best.value.objective.in(dollars_per_acre) ==
          relative(2.0 * once.best.value.objective.in(dollars_per_acre), round_off));
  }
}

TEST_CASE("the land expectation value is the present value of four hundred rotations") {
  const StandProblem problem = plain_problem();
  const PricedRegime best = solve(problem).best;
  const double rotation_yr = best.regime.final_harvest.in(years) +
                             problem.stand_case.costs.regeneration_delay_yr;
  double sum = 0.0;
  for (int rotation = 0; rotation < 400; ++rotation) {
    sum += best.value.net_present_value.in(dollars_per_acre) *
           problem.stand_case.costs.rate.discount_factor(years(rotation * rotation_yr));
  }
  CHECK(best.value.objective.in(dollars_per_acre) == relative(sum, 1e-12));
}

TEST_CASE("the best land expectation value does not rise with the establishment cost") {
  StandProblem problem = plain_problem();
  double before = HUGE_VAL;
  for (double cost = 0; cost <= 900; cost += 100) {
    problem.stand_case.costs.establishment = dollars_per_acre(cost);
    const double now = best_of(problem);
    CHECK(at_least(before, now));
    before = now;
  }
}

TEST_CASE("a lattice without a regime says so and why") {
  StandProblem problem = plain_problem();
  problem.lattice.final_from = age(160);
  problem.lattice.final_to = age(170);
  const StandSolution solution = solve(problem);
  CHECK(solution.status == StandSolution::Status::no_regime);
  CHECK_FALSE(solution.reason.empty());
  CHECK(solution.certificate.lattice_regimes == 0);
}

TEST_CASE("a stopped search claims nothing that it has not proved") {
  StandProblem problem = plain_problem();
  std::stop_source source;
  source.request_stop();
  StandOptions options;
  options.stop = source.get_token();
  for (const auto method : {StandOptions::Method::automatic, StandOptions::Method::exhaustive}) {
    options.method = method;
    const StandSolution solution = solve(problem, options);
    CHECK(solution.status != StandSolution::Status::optimal);
    CHECK(solution.certificate.gap > dollars_per_acre(0));
  }
}

TEST_CASE("plans that are worth the same to the bit go to fewer entries and earlier harvests") {
  StandProblem problem = plain_problem();
  problem.lattice.guards = {};
  problem.stand_case.prices = scaled(problem.stand_case.prices, 0.0);
  problem.stand_case.costs.establishment = dollars_per_acre(0);
  for (const auto method : {StandOptions::Method::automatic, StandOptions::Method::exhaustive}) {
    StandOptions options;
    options.method = method;
    options.by_count = true;
    const StandSolution solution = solve(problem, options);
    CHECK(describe(solution.best.regime) == "final 20");
    REQUIRE(solution.by_count.size() == 3);
    CHECK(describe(solution.by_count[1]->regime) == describe(Regime{{{age(12), 0.2}}, age(20)}));
    CHECK(describe(solution.by_count[2]->regime) ==
          describe(Regime{{{age(12), 0.2}, {age(17), 0.2}}, age(22)}));
  }
}

}  // namespace staddle::support
