// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "staddle/base/tolerance.h"
#include "staddle/tract/solve.h"
#include "support/near.h"
#include "tract/small_tracts.h"

namespace staddle {
namespace {

using support::relative;
using support::two_methods;
using Status = TractSolution::Status;

// By hand, from the example of staddle/tract/solve.h: cut in years 0 and 1 the two stands
// bring at most 100 x 550 + 50 x 750 = $92,500 in the first year.
TEST_CASE("more income than there is names the most that can be had") {
  TractProblem tract = support::two_stands();
  tract.plan.income_floors = {{1, 1, dollars(100'000)}};
  const TractSolution solution = solve(tract).value();
  REQUIRE(solution.status == Status::infeasible);
  CHECK_FALSE(solution.keeps_limits);
  REQUIRE(solution.conflicts.size() == 1);
  const LimitConflict& conflict = solution.conflicts.front();
  CHECK(conflict.limit == "income_floor_usd");
  CHECK(conflict.period == 1);
  CHECK(conflict.asked == relative(100'000, two_methods));
  CHECK(conflict.most_possible == relative(92'500, 1e-6));
  CHECK(conflict.text ==
        "an income of $100,000 in 2031 cannot be had with the other limits: the most is $92,500");
  // What is told besides is the plan that comes nearest: both cut next year.
  CHECK(solution.present_value.in(dollars) == relative(100 * 440 + 50 * 600, 1e-6));
}

// An income of 92,500 needs all 150 acres cut next year; a cap of 60 acres allows B and
// ten acres of A, 43,000. The smallest relaxation, counted as shares of what is asked:
// a dollar of income is 1/92,500; an acre of A is 550 of them and 1/60 of the cap, so
// income gives way.
TEST_CASE("limits that conflict give way where it is the smallest share of what they ask") {
  TractProblem tract = support::two_stands();
  tract.plan.income_floors = {{1, 1, dollars(92'500)}};
  tract.plan.final_harvest_acres_max_per_period = acres(60);
  const TractSolution solution = solve(tract).value();
  REQUIRE(solution.status == Status::infeasible);
  REQUIRE_FALSE(solution.conflicts.empty());
  double relaxed = 0.0;
  for (const LimitConflict& conflict : solution.conflicts) {
    relaxed += std::fabs(conflict.asked - conflict.most_possible) / conflict.asked;
  }
  // Year 2 cuts what is left: 90 acres, 30 more than the cap; shared out between years 1
  // and 2 that is 30 acres at the least, so 0.5 of the cap, and 92,500 - (50 x 750 +
  // 40 x 550) of income beside it.
  CHECK(relaxed <= 0.5 + (92'500.0 - 59'500.0) / 92'500.0 + 1e-6);
  CHECK(solution.bound.in(dollars) >= solution.present_value.in(dollars));
}

TEST_CASE("a limit just kept is no conflict and a limit just missed is one") {
  TractProblem tract = support::two_stands();
  tract.plan.income_floors = {{1, 1, dollars(92'500 - 0.5)}};
  CHECK(solve(tract).value().status == Status::optimal);
  tract.plan.income_floors = {{1, 1, dollars(92'500 + 0.5)}};
  CHECK(solve(tract).value().status == Status::infeasible);
}

// An acre cut now earns a dollar and loses 639: far more than giving way is first
// said to cost.
TEST_CASE("a limit that costs hundreds of dollars a dollar is kept all the same") {
  TractProblem tract = support::two_stands_worth({0.1, 0.1, 100.0, 100.0});
  tract.stands.pop_back();
  tract.plan.income_floors = {{1, 1, dollars(30)}};
  const TractSolution solution = solve(tract).value();
  REQUIRE(solution.status == Status::optimal);
  CHECK(solution.keeps_limits);
  CHECK(solution.present_value.in(dollars) == relative(70 * 640 + 30 * 1, 1e-6));
  REQUIRE(solution.limit_costs.size() == 1);
  CHECK(solution.limit_costs[0].shadow_price == relative(640 - 1, 1e-6));
}

TEST_CASE("bad plans are refused with their places") {
  TractProblem tract = support::two_stands();
  tract.plan.years = 7;
  tract.plan.period_yr = 2;
  tract.plan.income_floors = {{0, 9, dollars(1)}};
  tract.plan.tons = {{"pulpwod", {}, {}, {}}};
  tract.stands[1].name = "A";
  const Result<TractSolution> result = solve(tract);
  REQUIRE_FALSE(result.has_value());
  std::vector<std::string> places;
  for (const Fault& fault : result.error()) places.push_back(fault.place);
  for (const char* place :
       {"/plan/period_yr", "/plan/income_floor_usd/0/from_year", "/plan/income_floor_usd/0/to_year",
        "/plan/tons/0/product", "/stands/1/name"}) {
    CHECK(std::count(places.begin(), places.end(), place) == 1);
  }
}

TEST_CASE("a stand that nothing can be done with is named") {
  TractProblem tract = support::two_stands();
  tract.stands[1].problem.lattice.final_from = age(40);
  tract.stands[1].problem.lattice.final_to = age(45);
  const Result<TractSolution> result = solve(tract);
  REQUIRE_FALSE(result.has_value());
  CHECK(result.error().front().code == FaultCode::no_regime);
  CHECK(result.error().front().place == "/stands/1");
}

TEST_CASE("a stop request gives a plan and says that it is not the best") {
  TractProblem tract = support::two_stands();
  tract.plan.income_floors = {{1, 1, dollars(48'500)}};
  std::stop_source stop;
  TractOptions options;
  options.stop = stop.get_token();
  options.progress = [&](const TractProgress& told) {
    if (told.round == 1) stop.request_stop();
  };
  const TractSolution solution = solve(tract, options).value();
  CHECK(solution.status == Status::limit_reached);
  CHECK(solution.bound.in(dollars) >= 77'200 - 1e-3);
  double area = 0.0;
  for (const StandSchedule& stand : solution.stands) {
    for (const RegimeShare& share : stand.regimes) area += share.acres.in(acres);
  }
  CHECK(area == relative(150, two_methods));
}

TEST_CASE("when the time is up at once every stand follows its own best plan") {
  TractProblem tract = support::two_stands();
  tract.plan.income_floors = {{1, 1, dollars(48'500)}};
  TractOptions options;
  int asked = 0;
  options.seconds_left = [&] { return ++asked > 2 ? -1.0 : 100.0; };
  const TractSolution solution = solve(tract, options).value();
  CHECK(solution.status == Status::limit_reached);
  CHECK_FALSE(solution.message.empty());
}

TEST_CASE("a gap that was asked for is enough") {
  TractProblem tract = support::two_stands();
  tract.plan.income_floors = {{1, 1, dollars(48'500)}};
  TractOptions options;
  options.max_gap = 0.2;
  const TractSolution solution = solve(tract, options).value();
  CHECK(solution.status == Status::optimal);
  CHECK(solution.keeps_limits);
  CHECK(solution.gap_fraction <= 0.2);
  CHECK(solution.present_value.in(dollars) <= 77'200 + 1e-3);
  CHECK(solution.bound.in(dollars) >= 77'200 - 1e-3);
}

}  // namespace
}  // namespace staddle
