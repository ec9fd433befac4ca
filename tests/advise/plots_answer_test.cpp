// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "staddle/advise/advise.h"
#include "support/loblolly_equations.h"
#include "support/near.h"

namespace staddle {
namespace {

// A stand of 17 years with this basal area, trees in proportion.
MeasuredStand stand_of(double basal_area_ft2_ac) {
  return {age(17),
          trees_per_acre(3.6 * basal_area_ft2_ac),
          square_feet_per_acre(basal_area_ft2_ac),
          0.40,
          std::nullopt,
          {}};
}

// One choice alone: to take a third now, which pays well and must leave `residual`, or
// nothing; the final harvest is at 30.
AdviseProblem one_choice(double residual_ft2_ac) {
  const EquationSet equations = support::coastal_loblolly();
  Costs costs;
  costs.rate = DiscountRate::real(0.05);
  AdviseProblem problem{{{GrowthModel::from_equations(equations, feet(70), trees_per_acre(600)),
                          Assortment::from_equations(equations, default_products()),
                          {{dollars_per_ton(25), 3.0, {}, {}},
                           {dollars_per_ton(18), 3.0, {}, {}},
                           {dollars_per_ton(7), 3.0, {}, {}}},
                          costs,
                          Hazard{},
                          stand_of(150)},
                         {},
                         acres(1)},
                        std::nullopt,
                        [](std::optional<MoneyPerAcre>) { return dollars_per_acre(500); },
                        {},
                        default_ready_limits(),
                        {},
                        std::nullopt,
                        std::nullopt};
  DecisionLattice& lattice = problem.stand.lattice;
  lattice.max_thinnings = 1;
  lattice.removal_fractions = {1.0 / 3.0};
  lattice.thinning_from = lattice.thinning_to = age(17);
  lattice.final_from = lattice.final_to = age(30);
  lattice.min_residual_basal_area = square_feet_per_acre(residual_ft2_ac);
  return problem;
}

PlotsQuestion plots_between(double low, double mean, double high) {
  return {12, square_feet_per_acre(mean), square_feet_per_acre(low), square_feet_per_acre(high),
          [mean](double share) { return stand_of(mean * share); }};
}

PlotsAnswer answer_to(double residual_ft2_ac, const PlotsQuestion& plots) {
  AdviseProblem problem = one_choice(residual_ft2_ac);
  problem.plots = plots;
  const Result<Advice> advice = advise(problem);
  REQUIRE(advice);
  REQUIRE(advice->plots);
  return *advice->plots;
}

TEST_CASE("advice that is the same at both ends needs no more plots") {
  const PlotsAnswer answer = answer_to(60, plots_between(120, 150, 180));
  CHECK(answer.same_advice);
  CHECK(answer.more_plots == 0);
  REQUIRE((answer.low.best && answer.high.best));
  CHECK(answer.low.best->regime.thinnings.size() == 1);
  CHECK(answer.low.basal_area == square_feet_per_acre(120));
  CHECK(answer.high.basal_area == square_feet_per_acre(180));
}

TEST_CASE("the plots that settle the advice follow from where it changes") {
  // A third leaves 90 where 135 stand: 15 from the mean, half of the half width of 30.
  const PlotsAnswer answer = answer_to(90, plots_between(120, 150, 180));
  CHECK_FALSE(answer.same_advice);
  CHECK(answer.low.best->regime.thinnings.empty());
  CHECK(answer.high.best->regime.thinnings.size() == 1);
  // 12 (2^2 - 1), and no more than the search is coarse.
  REQUIRE(answer.more_plots);
  CHECK(*answer.more_plots >= 36);
  CHECK(*answer.more_plots <= 37);
}

TEST_CASE("a mean at the turning point cannot be settled by plots") {
  const PlotsAnswer answer = answer_to(100, plots_between(120, 150.001, 180));
  CHECK_FALSE(answer.same_advice);
  CHECK_FALSE(answer.more_plots);
}

}  // namespace
}  // namespace staddle
