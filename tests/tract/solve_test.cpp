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
#include "tract/stand_model.h"

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

}  // namespace
}  // namespace staddle
