// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/tract/solve.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "staddle/base/tolerance.h"
#include "staddle/optimise/solve.h"
#include "support/near.h"
#include "support/seed.h"
#include "tract/small_tracts.h"
#include "tract/tract_column.h"

namespace staddle {
namespace {

using support::relative;
using support::two_methods;
using support::within;
using Status = TractSolution::Status;

double usd(Money money) { return money.in(dollars); }

TEST_CASE("the header's example of two stands is cut as worked out by hand") {
  TractProblem tract = support::two_stands();
  const TractSolution unlimited = solve(tract).value();
  CHECK(unlimited.status == Status::optimal);
  CHECK(usd(unlimited.present_value) == relative(80'000, two_methods));
  CHECK(unlimited.limit_costs.empty());

  tract.plan.income_floors = {{1, 1, dollars(48'500)}};
  const TractSolution solution = solve(tract).value();
  REQUIRE(solution.status == Status::optimal);
  CHECK(solution.keeps_limits);
  CHECK(usd(solution.unlimited_present_value) == relative(80'000, two_methods));
  CHECK(usd(solution.present_value) == relative(77'200, two_methods));
  CHECK(usd(solution.bound) == relative(77'200, two_methods));
  REQUIRE(solution.stands[0].regimes.size() == 2);
  CHECK(solution.stands[0].regimes[0].acres.in(acres) == relative(80, two_methods));
  CHECK(solution.stands[0].regimes[0].report.final_harvest_age == age(22));
  CHECK(solution.stands[0].regimes[1].acres.in(acres) == relative(20, two_methods));
  CHECK(solution.stands[0].regimes[1].report.final_harvest_age == age(21));
  REQUIRE(solution.stands[1].regimes.size() == 1);
  CHECK(solution.stands[1].regimes[0].report.final_harvest_age == age(22));
  REQUIRE(solution.limit_costs.size() == 1);
  CHECK(solution.limit_costs[0].shadow_price == relative(40.0 / 550.0, two_methods));
  CHECK(solution.limit_costs[0].text ==
        "each further $1,000 of income wanted in 2031 costs $75 of present value");
  CHECK(usd(solution.periods[0].income) == relative(48'500, two_methods));
  CHECK(usd(solution.periods[1].income) == relative(80 * 750, two_methods));
}

std::vector<TractProblem> limited_tracts(const std::string& tag, int count) {
  const support::TaggedSeed seed(tag);
  RandomStream random = seed.stream();
  std::vector<TractProblem> all;
  for (int i = 0; i < count; ++i) {
    all.push_back(support::random_tract(random, {2 + i % 4, i % 3 == 2}));
    support::add_random_limits(random, all.back());
  }
  return all;
}

// To the bit, figures and words.
void check_same(const TractSolution& a, const TractSolution& b) {
  CHECK(a.status == b.status);
  CHECK(a.present_value == b.present_value);
  CHECK(a.bound == b.bound);
  CHECK(a.rounds == b.rounds);
  CHECK(a.columns == b.columns);
  REQUIRE(a.stands.size() == b.stands.size());
  for (const StandSchedule& stand : a.stands) {
    const auto same = std::find_if(b.stands.begin(), b.stands.end(),
                                   [&](const StandSchedule& s) { return s.name == stand.name; });
    REQUIRE(same != b.stands.end());
    REQUIRE(same->regimes.size() == stand.regimes.size());
    for (std::size_t i = 0; i < stand.regimes.size(); ++i) {
      CHECK(same->regimes[i].acres == stand.regimes[i].acres);
      CHECK(same_regime(same->regimes[i].report.regime(), stand.regimes[i].report.regime()));
    }
  }
  REQUIRE(a.limit_costs.size() == b.limit_costs.size());
  for (std::size_t i = 0; i < a.limit_costs.size(); ++i) {
    CHECK(a.limit_costs[i].shadow_price == b.limit_costs[i].shadow_price);
    CHECK(a.limit_costs[i].text == b.limit_costs[i].text);
  }
  REQUIRE(a.conflicts.size() == b.conflicts.size());
  for (std::size_t i = 0; i < a.conflicts.size(); ++i) {
    CHECK(a.conflicts[i].text == b.conflicts[i].text);
  }
}

TEST_CASE("without limits every stand follows its own best plan") {
  const support::TaggedSeed seed("no limits");
  RandomStream random = seed.stream();
  for (int trial = 0; trial < 8; ++trial) {
    const TractProblem problem = support::random_tract(random, {5, trial % 2 == 1});
    const TractSolution solution = solve(problem).value();
    CHECK(solution.status == Status::optimal);
    double sum = 0.0;
    for (std::size_t s = 0; s < problem.stands.size(); ++s) {
      const TractStand& stand = problem.stands[s];
      StandProblem own = stand.problem;
      double successor = 0.0;
      if (stand.successor) {
        successor = solve(*stand.successor).best.value.objective.in(dollars_per_acre);
      }
      switch (stand.after_harvest.kind) {
        case LandAfterHarvest::Kind::replant:
          own.stand_case.land_value = dollars_per_acre(successor);
          break;
        case LandAfterHarvest::Kind::replant_if_worthwhile:
          own.stand_case.land_value = dollars_per_acre(std::max(0.0, successor));
          break;
        case LandAfterHarvest::Kind::land_price:
          own.stand_case.land_value = stand.after_harvest.price;
          break;
      }
      const StandSolution best = solve(own);
      const StandSchedule& schedule = solution.stands[s];
      REQUIRE(schedule.regimes.size() == 1);
      CHECK(schedule.name == stand.name);
      CHECK(schedule.regimes[0].acres == own.acres);
      CHECK(same_regime(schedule.regimes[0].report.regime(), best.best.regime));
      CHECK(schedule.regimes[0].present_value.in(dollars_per_acre) ==
            relative(best.best.value.objective.in(dollars_per_acre), two_methods));
      sum += usd(best.best.value.objective * own.acres);
    }
    CHECK(usd(solution.present_value) == relative(sum, two_methods));
    CHECK(usd(solution.unlimited_present_value) == relative(sum, two_methods));
    CHECK(solution.gap_fraction <= tolerance::tract_proof);
  }
}

TEST_CASE("the order of the stands changes nothing to the bit") {
  for (TractProblem problem : limited_tracts("order", 8)) {
    const TractSolution before = solve(problem).value();
    std::reverse(problem.stands.begin(), problem.stands.end());
    if (product_names(problem) != before.products) continue;
    check_same(before, solve(problem).value());
  }
}

TEST_CASE("the number of threads changes nothing to the bit") {
  for (const TractProblem& problem : limited_tracts("threads", 6)) {
    TractOptions one, three;
    one.threads = 1;
    three.threads = 3;
    check_same(solve(problem, one).value(), solve(problem, three).value());
  }
}

TEST_CASE("all regimes enumerated give the value of column generation") {
  TractOptions enumerate;
  enumerate.method = TractOptions::Method::enumerate;
  for (const TractProblem& problem : limited_tracts("enumerated", 14)) {
    const TractSolution fast = solve(problem).value();
    const TractSolution slow = solve(problem, enumerate).value();
    CHECK(fast.status == slow.status);
    if (fast.status != Status::optimal) continue;
    CHECK(usd(fast.present_value) ==
          within(usd(slow.present_value),
                 10 * two_methods * (1.0 + std::fabs(usd(slow.present_value)))));
    CHECK(slow.columns > fast.columns);
  }
}

TEST_CASE("an optimal plan keeps every limit as its periods tell it") {
  int checked = 0;
  for (const TractProblem& problem : limited_tracts("kept", 16)) {
    const TractSolution solution = solve(problem).value();
    if (solution.status != Status::optimal) continue;
    const auto slack = [](double amount) { return 1e-6 * (1.0 + std::fabs(amount)); };
    for (std::size_t p = 0; p < solution.periods.size(); ++p) {
      const TractPeriod& period = solution.periods[p];
      const double income = usd(period.income);
      for (const IncomeFloor& floor : problem.plan.income_floors) {
        const int years = std::min(period.to_year, floor.to_year) -
                          std::max(period.from_year, floor.from_year) + 1;
        if (years < 1) continue;
        const double asked = years * usd(floor.per_year);
        CHECK(income >= asked - slack(asked));
        ++checked;
      }
      if (problem.plan.income_max_drop_fraction && p > 0) {
        const double before = usd(solution.periods[p - 1].income);
        CHECK(income >= (1.0 - *problem.plan.income_max_drop_fraction) * before - slack(before));
        ++checked;
      }
      if (problem.plan.final_harvest_acres_max_per_period) {
        const double most = problem.plan.final_harvest_acres_max_per_period->in(acres);
        CHECK(period.final_harvest_acres.in(acres) <= most + slack(most));
        ++checked;
      }
      if (problem.plan.establishment_max_per_period) {
        const double most = usd(*problem.plan.establishment_max_per_period);
        CHECK(usd(period.establishment) <= most + slack(most));
        ++checked;
      }
      if (problem.plan.open_stand && period.from_year >= problem.plan.open_stand->from_year) {
        const double least = problem.plan.open_stand->acres_min.in(acres);
        CHECK(period.open_acres.in(acres) >= least - slack(least));
        ++checked;
      }
    }
    if (problem.plan.ending_value_min_fraction) {
      const double asked = *problem.plan.ending_value_min_fraction * usd(solution.starting_value);
      CHECK(usd(solution.ending_value) >= asked - slack(asked));
    }
    for (std::size_t s = 0; s < problem.stands.size(); ++s) {
      double sum = 0.0;
      for (const RegimeShare& share : solution.stands[s].regimes) sum += share.acres.in(acres);
      CHECK(sum == relative(problem.stands[s].problem.acres.in(acres), support::round_off));
    }
  }
  CHECK(checked > 20);
}

TEST_CASE("jobs and flows of a plan without storms tell the same money and the same tons") {
  const support::TaggedSeed seed("jobs");
  RandomStream random = seed.stream();
  for (int trial = 0; trial < 6; ++trial) {
    TractProblem problem = support::random_tract(random, {4, false});
    problem.plan.years = 12 * problem.plan.period_yr;
    const TractSolution solution = solve(problem).value();
    for (const TractPeriod& year : solution.years) {
      double tons_cut = 0.0, planting = 0.0, cut = 0.0;
      for (const TractAction& action : solution.actions) {
        if (action.year != year.from_year) continue;
        for (const Weight& weight : action.tons) tons_cut += weight.in(tons);
        if (action.kind == TractAction::Kind::planting) planting -= usd(action.money);
        if (action.kind == TractAction::Kind::final_harvest) cut += action.acres.in(acres);
      }
      double told = 0.0;
      for (const Weight& weight : year.tons) told += weight.in(tons);
      CHECK(told == within(tons_cut, 1e-6 * (1.0 + std::fabs(tons_cut))));
      CHECK(usd(year.establishment) == within(planting, 1e-6 * (1.0 + planting)));
      CHECK(year.final_harvest_acres.in(acres) == within(cut, 1e-6 * (1.0 + cut)));
    }
  }
}

}  // namespace
}  // namespace staddle
