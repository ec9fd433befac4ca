// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "lp/solve.h"
#include "staddle/tract/solve.h"
#include "support/near.h"
#include "support/seed.h"
#include "tract/made_ready.h"
#include "tract/small_tracts.h"

namespace staddle {
namespace {

using support::MadeReady;
using support::relative;
using support::two_methods;
using Status = TractSolution::Status;

// By hand, from the example of staddle/tract/solve.h: 48,500 of income in the first year
// with whole stands. B next year alone gives 37,500; A next year alone 55,000, which costs
// 100 x 40 = 4,000; so A is cut next year, B in year 2.
TEST_CASE("whole stands of the header's example are cut as worked out by hand") {
  TractProblem tract = support::two_stands();
  tract.plan.income_floors = {{1, 1, dollars(48'500)}};
  tract.plan.whole_stands = true;
  const TractSolution solution = solve(tract).value();
  REQUIRE(solution.status == Status::optimal);
  CHECK(solution.present_value.in(dollars) == relative(76'000, two_methods));
  CHECK(solution.split_present_value.in(dollars) == relative(77'200, two_methods));
  REQUIRE(solution.stands[0].regimes.size() == 1);
  CHECK(solution.stands[0].regimes[0].report.final_harvest_age == age(21));
  REQUIRE(solution.stands[1].regimes.size() == 1);
  CHECK(solution.stands[1].regimes[0].report.final_harvest_age == age(23));
}

// Every regime of every stand in one program of whole numbers.
lp::Solution all_in_one(const MadeReady& made) {
  lp::LinearProgram program{lp::Direction::maximise};
  for (std::size_t s = 0; s < made.models.size(); ++s) program.add_row({1.0, 1.0});
  for (const LimitRow& row : made.limits.rows) {
    program.add_row(row.is_floor ? lp::Row{row.bound, lp::infinity}
                                 : lp::Row{-lp::infinity, row.bound});
  }
  for (const TractColumn& column : made.all_columns()) {
    const double area = made.models[column.stand].acres;
    std::vector<lp::Term> terms = {{column.stand, 1.0}};
    for (const lp::Term& use : column.uses) {
      terms.push_back({made.models.size() + use.index, area * use.value});
    }
    program.add_column({.cost = area * column.value, .upper = 1.0, .whole = true}, terms);
  }
  return lp::solve(program, {.seconds = 20.0});
}

TEST_CASE("plans of whole stands are those of all regimes in one program of whole numbers") {
  const support::TaggedSeed seed("whole");
  RandomStream random = seed.stream();
  int compared = 0;
  for (int trial = 0; trial < 24; ++trial) {
    TractProblem problem = support::random_tract(random, {2 + trial % 3, false});
    for (TractStand& stand : problem.stands) {
      stand.problem.lattice.max_thinnings = std::min(1, stand.problem.lattice.max_thinnings);
      if (stand.successor) stand.successor->lattice.max_thinnings = 1;
    }
    support::add_random_limits(random, problem);
    problem.plan.whole_stands = true;
    const lp::Solution all = all_in_one(MadeReady(problem));
    const TractSolution solution = solve(problem).value();
    if (all.status == lp::Status::infeasible) {
      CHECK(solution.status != Status::optimal);
      continue;
    }
    if (all.status != lp::Status::optimal || solution.status != Status::optimal) continue;
    ++compared;
    CHECK(solution.present_value.in(dollars) ==
          support::within(all.value, 1e-6 * (1.0 + std::fabs(all.value))));
    for (const StandSchedule& stand : solution.stands) CHECK(stand.regimes.size() == 1);
    CHECK(solution.split_present_value.in(dollars) >=
          solution.present_value.in(dollars)-1e-6 * std::fabs(all.value));
  }
  CHECK(compared > 3);
}

}  // namespace
}  // namespace staddle
