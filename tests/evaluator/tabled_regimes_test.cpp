// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>

#include "published/stand_fixture.h"
#include "staddle/advise/advise.h"
#include "support/near.h"

namespace staddle {
namespace {

using support::within;

// Two products; thinned at 15 to two thirds of the basal area.
TabledRegime thinned_at_15() {
  TabledRegime regime;
  regime.name = "thinned at 15";
  YieldTable& table = regime.table;
  table.age_yr = {10, 12, 15, 20, 25, 30};
  table.dominant_height_ft = {33, 39, 48, 60, 70, 79};
  table.tpa = {560, 540, 320, 310, 290, 270};
  table.basal_area_ft2_ac = {80, 100, 80, 100, 118, 130};
  table.products = {"sawtimber", "pulpwood"};
  table.tons_ac = {{0, 0, 0, 5, 30, 62}, {20, 33, 38, 55, 60, 58}};
  regime.thinnings = {{15, {0, 22}, 1.0 / 3.0}};
  return regime;
}

TabledChoice choice_of(const TabledRegime& regime) {
  StandCase stand = published::bare_land(published::equations("loblolly-planted-coastal"), 70, 600);
  stand.growth = GrowthModel::from_tabled_regime(regime);
  stand.assortment = Assortment::from_tabled_regime(regime);
  stand.prices = {{dollars_per_ton(25), 1.0, {}, {}}, {dollars_per_ton(7), 1.0, {}, {}}};
  for (const TabledThinning& thinning : regime.thinnings) {
    TabledCut cut{age(thinning.age_yr), {}, trees_per_acre(320), square_feet_per_acre(80)};
    for (const double cut_tons : thinning.tons_ac) cut.tons.push_back(tons_per_acre(cut_tons));
    stand.tabled_cuts.push_back(cut);
  }
  return {regime.name, {std::move(stand), {}}, {age(20), age(25), age(30)}};
}

const Regime thinned_and_cut_at_25{{{age(15), 1.0 / 3.0}}, age(25)};

TEST_CASE("a tabled regime pays what its rows and its cut are worth") {
  const TabledChoice choice = choice_of(thinned_at_15());
  const double v = 1 / 1.05;
  double npv = -350;
  for (int year = 1; year <= 26; ++year) npv -= 8 * std::pow(v, year);
  npv += 22 * 7 * std::pow(v, 15) + (30 * 25 + 60 * 7) * std::pow(v, 25);
  const RegimeValue value = evaluate(choice.problem.stand_case, thinned_and_cut_at_25);
  CHECK(value.net_present_value.in(dollars_per_acre) == within(npv, 1e-9));
  CHECK(value.objective.in(dollars_per_acre) == within(npv / (1 - std::pow(v, 26)), 1e-9));
}

TEST_CASE("just before its cut a tabled stand carries the row and what the cut takes") {
  const TabledChoice choice = choice_of(thinned_at_15());
  const RegimeReport report =
      simulate(choice.problem.stand_case, stated("plan", thinned_and_cut_at_25)).value();
  REQUIRE(report.thinnings.size() == 1);
  const ThinningRecord& thinning = report.thinnings.front();
  CHECK(thinning.before.basal_area.in(square_feet_per_acre) == within(120, 1e-9));
  CHECK(thinning.before.trees.in(trees_per_acre) == within(480, 1e-9));
  CHECK(thinning.after.basal_area.in(square_feet_per_acre) == within(80, 1e-9));
  CHECK(thinning.removal_fraction == within(1.0 / 3.0, 1e-12));
  CHECK(thinning.tons[1].in(tons_per_acre) == 22);
  CHECK(report.years[15].tons[1].in(tons_per_acre) == within(60, 1e-9));
}

TEST_CASE("columns are interpolated within a stretch and never across a cut") {
  const TabledChoice choice = choice_of(thinned_at_15());
  const RegimeReport report =
      simulate(choice.problem.stand_case, stated("plan", thinned_and_cut_at_25)).value();
  // Three rows before the cut, fewer than a curve needs: straight lines.
  CHECK(report.years[11].tons[1].in(tons_per_acre) == within(26.5, 1e-9));
  CHECK(report.years[14].tons[1].in(tons_per_acre) == within(51, 1e-9));
  // Between 15 and 20 the curve starts from what the cut left.
  CHECK(report.years[16].tons[1].in(tons_per_acre) < 55);
}

TEST_CASE("without a removal fraction trees and basal area are as listed and the cut still sells") {
  TabledRegime regime = thinned_at_15();
  regime.thinnings[0].removal_fraction = -1.0;
  const TabledChoice choice = choice_of(regime);
  const RegimeReport report =
      simulate(choice.problem.stand_case, stated("plan", thinned_and_cut_at_25)).value();
  CHECK(report.thinnings.front().revenue.in(dollars_per_acre) == within(154, 1e-9));
  CHECK_FALSE(report.thinnings.front().cuts_nothing);
}

TEST_CASE("tables are compared at their own best ends and the better one is the advice") {
  const TabledChoice thinned = choice_of(thinned_at_15());
  TabledRegime plain = thinned_at_15();
  plain.name = "never thinned";
  plain.thinnings.clear();
  plain.table.tons_ac = {{0, 0, 0, 3, 16, 36}, {20, 33, 60, 70, 70, 66}};
  const TabledChoice never = choice_of(plain);
  AdviseProblem problem{never.problem, std::nullopt, {}, {}, {}, {}, std::nullopt, std::nullopt};
  problem.tabled = {never, thinned};
  const Advice advice = staddle::advise(problem).value();
  double best = -1e300;
  for (const TabledChoice* choice : {&never, &thinned}) {
    for (const Age at : choice->final_ages) {
      Regime regime = thinned_and_cut_at_25;
      if (choice == &never) regime.thinnings.clear();
      regime.final_harvest = at;
      best = std::max(best,
                      evaluate(choice->problem.stand_case, regime).objective.in(dollars_per_acre));
    }
  }
  CHECK(advice.best.value.objective.in(dollars_per_acre) == best);
  REQUIRE(advice.regimes.size() == 2);
  CHECK(advice.regimes[1].report.name == "thinned at 15");
  CHECK(std::min(advice.regimes[0].loss_against_best, advice.regimes[1].loss_against_best) ==
        dollars_per_acre(0));
  CHECK(advice.survives.size() == 4);
}

}  // namespace
}  // namespace staddle
