// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>

#include "optimise/best_of.h"
#include "optimise/describe.h"
#include "optimise/random_problem.h"
#include "staddle/base/tolerance.h"
#include "support/seed.h"

namespace staddle::support {
namespace {

StandProblem stormy(std::uint64_t number) {
  const TaggedSeed seed("storms of the invariants");
  RandomStream random = seed.stream(number);
  StandProblem problem = plain_problem();
  problem.stand_case.hazard = random_hazard(random);
  problem.lattice.max_thinnings = 1;
  return problem;
}

}  // namespace

TEST_CASE("the best value never rises with the probability of a peril") {
  for (std::uint64_t number = 0; number < 6; ++number) {
    CAPTURE(number);
    const StandProblem problem = stormy(number);
    for (std::size_t peril = 0; peril < problem.stand_case.hazard.perils.size(); ++peril) {
      double before = HUGE_VAL;
      for (const double probability : {0.0, 0.005, 0.02, 0.05}) {
        StandProblem varied = problem;
        varied.stand_case.hazard.perils[peril].annual_probability = probability;
        const double now = best_of(varied);
        CHECK(at_least(before, now));
        before = now;
      }
    }
  }
}

TEST_CASE("the best value never rises with the odds ratio of a thinning") {
  for (std::uint64_t number = 0; number < 6; ++number) {
    CAPTURE(number);
    StandProblem problem = stormy(number);
    double before = HUGE_VAL;
    for (const double ratio : {1.0, 1.5, 3.0, 6.0}) {
      problem.stand_case.hazard = with_odds_ratio(problem.stand_case.hazard, ratio);
      const double now = best_of(problem);
      CHECK(at_least(before, now));
      before = now;
    }
  }
}

TEST_CASE("a hazard of zero probability changes no bit of the answer") {
  const TaggedSeed seed("zero probability");
  for (std::uint64_t number = 0; number < 20; ++number) {
    CAPTURE(number);
    RandomStream random = seed.stream(number);
    StandProblem calm = random_problem(random, {});
    StandProblem null = calm;
    null.stand_case.hazard = random_hazard(random);
    for (Peril& peril : null.stand_case.hazard.perils) peril.annual_probability = 0.0;
    StandOptions options;
    options.windows = options.by_count = true;
    CHECK(describe(solve(null, options)) == describe(solve(calm, options)));
  }
}

TEST_CASE("a constant loss that leaves nothing brings the final harvest no later") {
  StandProblem problem = plain_problem();
  problem.lattice.max_thinnings = 0;
  Peril fire;
  fire.name = "total loss";
  fire.constant_share = 1.0;
  int before = problem.lattice.final_to.whole();
  for (const double probability : {0.0, 0.005, 0.01, 0.02, 0.04}) {
    fire.annual_probability = probability;
    problem.stand_case.hazard.perils = {fire};
    const int now = solve(problem).best.regime.final_harvest.whole();
    CHECK(now <= before);
    before = now;
  }
}

}  // namespace staddle::support
