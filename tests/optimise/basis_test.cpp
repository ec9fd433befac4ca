// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "optimise/describe.h"
#include "optimise/random_problem.h"
#include "staddle/base/tolerance.h"
#include "support/money.h"
#include "support/seed.h"

namespace staddle::support {
namespace {

// The best of all regimes with at most one thinning, each priced by the evaluator alone.
double best_of_all(const StandProblem& problem) {
  const DecisionLattice& lattice = problem.lattice;
  double best = -1e300;
  const auto offer = [&](const Regime& regime) {
    const Result<RegimeReport> told = simulate(problem.stand_case, stated("", regime));
    if (!told || !broken_limits(problem, *told).empty()) return;
    best = std::max(best, usd(told->value.objective));
  };
  const int present = problem.stand_case.present().whole();
  for (int last = std::max(present, lattice.final_from.whole()); last <= lattice.final_to.whole();
       ++last) {
    offer({{}, age(last)});
    for (int at = std::max(present, lattice.thinning_from.whole());
         at <= std::min(lattice.thinning_to.whole(), last - lattice.years_between_entries); ++at) {
      for (const double removal : lattice.removal_fractions)
        offer({{{age(at), removal}}, age(last)});
    }
  }
  return best;
}

}  // namespace

TEST_CASE("with a tax basis the best is the best of all regimes priced one by one") {
  const TaggedSeed seed("tax basis");
  for (std::uint64_t number = 0; number < 20; ++number) {
    CAPTURE(number);
    RandomStream random = seed.stream(number);
    StandProblem problem = plain_problem();
    problem.lattice.max_thinnings = 1;
    problem.lattice.final_to = age(38);
    if (number % 2 == 0) {
      problem.stand_case.standing = MeasuredStand{
          age(15), trees_per_acre(500), square_feet_per_acre(125), 0.39, std::nullopt, {}};
      problem.stand_case.land_value = dollars_per_acre(400);
    }
    if (number % 3 == 0) problem.stand_case.hazard = random_hazard(random);
    TimberBasis basis{
        dollars_per_acre(20 + 180 * random.next_uniform()), 0.08 * random.next_uniform(), {}};
    if (number % 4 < 2) basis.tons = tons_per_acre(20 + 60 * random.next_uniform());
    problem.stand_case.basis = basis;
    const StandSolution solution = solve(problem);
    REQUIRE(solution.status == StandSolution::Status::optimal);
    CHECK(solution.certificate.gap == MoneyPerAcre());
    CHECK(tolerance::values_tie(usd(solution.best.value.objective), best_of_all(problem)));
  }
}

}  // namespace staddle::support
