// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>

#include "signs/stand_by_hand.h"
#include "staddle/hazard/damage.h"
#include "staddle/signs/risk_notes.h"
#include "support/near.h"

namespace staddle {
namespace {

using support::relative;

StandCase stormy_case() {
  StandCase result = by_hand::stand_case();
  result.hazard = by_hand::hazard();
  return result;
}

RegimeReport told(const StandCase& stand_case, const Regime& regime) {
  const Result<RegimeReport> report = simulate(stand_case, stated("plan", regime));
  REQUIRE(report.has_value());
  return *report;
}

const Regime two_cuts{{{age(18), 0.5}, {age(25), 0.3}}, age(35)};

TEST_CASE("storms after a thinning agree with the evaluator year by year") {
  const StandCase stand_case = stormy_case();
  const RegimeReport plan = told(stand_case, two_cuts);
  const std::vector<StormAfterThinning> storms = storms_after_thinnings(stand_case, plan);
  REQUIRE(storms.size() == 2);
  for (const StormAfterThinning& storm : storms) {
    const auto year = [&](int at) { return plan.years[static_cast<std::size_t>(at)]; };
    const int cut = storm.at.whole();
    CHECK(storm.loss_share_before == relative(year(cut).expected_loss_share, 1e-12));
    CHECK(storm.loss_share_after == relative(year(cut + 1).expected_loss_share, 1e-12));
    CHECK(storm.yearly_loss_before.in(dollars_per_acre) ==
          relative(year(cut).expected_loss.in(dollars_per_acre), 1e-12));
    CHECK(storm.yearly_loss_after.in(dollars_per_acre) ==
          relative(year(cut + 1).expected_loss.in(dollars_per_acre), 1e-12));
  }
}

TEST_CASE("the opening raises the loss of logistic perils and of no other") {
  const StandCase stand_case = stormy_case();
  const auto storms = storms_after_thinnings(stand_case, told(stand_case, two_cuts));
  CHECK(storms[0].perils[0].share_with > storms[0].perils[0].share_without);
  CHECK(storms[0].perils[1].share_with > storms[0].perils[1].share_without);
  CHECK(storms[0].perils[2].share_with == 1.0);
  CHECK(storms[0].perils[2].share_without == 1.0);
  CHECK(storms[0].extra_expected_loss > storms[1].extra_expected_loss);
}

TEST_CASE("the added loss is the sum over five years of what the odds term adds") {
  StandCase stand_case = stormy_case();
  stand_case.hazard.perils.resize(1);  // the hurricane alone
  const RegimeReport plan = told(stand_case, two_cuts);
  const Peril& peril = stand_case.hazard.perils[0];
  const double slenderness_then = capped_slenderness(
      plan.thinnings[0].before.dominant_height.in(feet),
      plan.thinnings[0].before.quadratic_mean_diameter.in(inches));
  double sum = 0.0;
  double worst = 0.0;
  for (int tau = 0; tau < 5; ++tau) {
    const YearRecord& year = plan.years[static_cast<std::size_t>(19 + tau)];
    Exposure exposure{true, year.measures.dominant_height, slenderness_then, 1.0 - tau / 5.0};
    exposure.slenderness = std::max(
        exposure.slenderness, capped_slenderness(year.measures.dominant_height.in(feet),
                                                 year.measures.quadratic_mean_diameter.in(inches)));
    const double with = damage_share(peril, exposure);
    exposure.opening = 0.0;
    const double cost = 0.75 * year.stumpage_value.in(dollars_per_acre) + 100.0;
    sum += 0.025 * (with - damage_share(peril, exposure)) * cost / std::pow(1.05, tau + 1);
    worst = std::max(worst, with * cost);
  }
  const StormAfterThinning storm = storms_after_thinnings(stand_case, plan)[0];
  CHECK(storm.extra_expected_loss.in(dollars_per_acre) == relative(sum, 1e-12));
  CHECK(storm.worst_event.in(dollars_per_acre) == relative(worst, 1e-12));
  CHECK(storm.worst_peril == "hurricane, moderate");
}

TEST_CASE("the added loss ends with the next entry") {
  StandCase stand_case = stormy_case();
  stand_case.hazard.recovery_yr = 20;
  const auto added = [&](int next_yr) {
    const Regime regime{{{age(18), 0.5}, {age(next_yr), 0.15}}, age(35)};
    return storms_after_thinnings(stand_case, told(stand_case, regime))[0].extra_expected_loss;
  };
  CHECK(added(20) < added(21));
  CHECK(added(22) < added(23));
  CHECK(added(23) == added(24));
}

TEST_CASE("a peril that cannot strike is no worst event") {
  StandCase stand_case = stormy_case();
  stand_case.hazard.perils[2].annual_probability = 0.0;
  const auto storms = storms_after_thinnings(stand_case, told(stand_case, two_cuts));
  CHECK(storms[0].worst_peril != "fire");
}

TEST_CASE("a thinning of today is told like any other") {
  StandCase stand_case = stormy_case();
  stand_case.standing = by_hand::measured_at(18);
  stand_case.standing->last_thinning = LastThinning{age(16), 0.5};
  const RegimeReport plan = told(stand_case, {{{age(18), 0.3}}, age(30)});
  const auto storms = storms_after_thinnings(stand_case, plan);
  REQUIRE(storms.size() == 1);
  CHECK(storms[0].at == age(18));
  // Two years ago half was cut, so this year's storms were not those of a closed stand.
  stand_case.standing->last_thinning.reset();
  const auto closed = storms_after_thinnings(stand_case, told(stand_case, plan.regime()));
  CHECK(storms[0].loss_share_before > closed[0].loss_share_before);
  CHECK(storms[0].loss_share_after > closed[0].loss_share_after);
}

TEST_CASE("without a hazard and without a cut there are no storms to tell") {
  CHECK(storms_after_thinnings(by_hand::stand_case(), told(by_hand::stand_case(), two_cuts))
            .empty());
  const StandCase stand_case = stormy_case();
  CHECK(storms_after_thinnings(stand_case, told(stand_case, {{}, age(35)})).empty());
}

}  // namespace
}  // namespace staddle
