// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/hazard/damage.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "support/near.h"

// The share destroyed, piece by piece, each bend straddled.
namespace staddle {
namespace {

using support::relative;
using support::round_off;
using support::within;

constexpr double step = 1e-6;  // to either side of a bend

Peril peril(bool wind) {
  LogisticShare share;
  share.base_damage_share = 0.12;
  share.reference_height = feet(65);
  share.height_slope_per_10ft = 0.45;
  share.slenderness_slope_per_10 = 0.20;
  share.thinning_odds_ratio = 3.0;
  share.wind = wind;
  Peril peril;
  peril.logistic = share;
  return peril;
}

Exposure exposed(double height_ft, double slenderness = 80, double opening = 0) {
  return {true, feet(height_ft), slenderness, opening};
}

double log_odds(double share) { return std::log(share / (1.0 - share)); }

}  // namespace

TEST_CASE("at the reference the base share is destroyed") {
  CHECK(damage_share(peril(true), exposed(65)) == relative(0.12, round_off));
  CHECK(damage_share(peril(false), exposed(65)) == relative(0.12, round_off));
}

TEST_CASE("the log odds follow height and slenderness and species in a straight line") {
  Peril slash = peril(true);
  slash.logistic->species_log_odds = -0.4;
  const double share = damage_share(slash, exposed(75, 95));
  CHECK(log_odds(share) == relative(log_odds(0.12) + 0.45 + 0.20 * 1.5 - 0.4, round_off));
}

TEST_CASE("half removed multiplies the odds by the odds ratio at a height of 65 feet") {
  for (const bool wind : {true, false}) {
    const double share = damage_share(peril(wind), exposed(65, 80, 1.0));
    CHECK(log_odds(share) == relative(log_odds(0.12) + std::log(3.0), round_off));
  }
}

TEST_CASE("seedlings lose nothing to perils with a logistic share") {
  for (const bool wind : {true, false}) {
    CHECK(damage_share(peril(wind), exposed(0)) == 0.0);
    CHECK(damage_share(peril(wind), exposed(20 - step)) == 0.0);
    CHECK(damage_share(peril(wind), exposed(20)) == 0.0);
    CHECK(damage_share(peril(wind), exposed(20 + step)) > 0.0);
  }
}

TEST_CASE("between 20 and 30 feet the share fades in") {
  // The height's own slope off, so that only the fading is seen.
  Peril flat = peril(true);
  flat.logistic->height_slope_per_10ft = 0.0;
  CHECK(damage_share(flat, exposed(25)) == relative(0.06, round_off));
  CHECK(damage_share(flat, exposed(30 - step)) < 0.12);
  CHECK(damage_share(flat, exposed(30)) == relative(0.12, round_off));
  CHECK(damage_share(flat, exposed(30 + step)) == relative(0.12, round_off));
}

TEST_CASE("an opening tells from 30 feet on with wind and from the first with ice") {
  Peril wind = peril(true);
  wind.logistic->height_slope_per_10ft = 0.0;
  Peril ice = wind;
  ice.logistic->wind = false;
  const auto raised = [](const Peril& one, double height_ft) {
    return log_odds(damage_share(one, exposed(height_ft, 80, 0.5))) -
           log_odds(damage_share(one, exposed(height_ft)));
  };
  CHECK(raised(wind, 30 - step) == within(0.0, 1e-12));
  CHECK(raised(wind, 30 + step) > 0.0);
  CHECK(raised(wind, 47.5) == relative(0.5 * 0.5 * std::log(3.0), round_off));
  // h stops rising at 1.3, that is at 75.5 ft.
  CHECK(raised(wind, 75.5 - 0.1) < 1.3 * 0.5 * std::log(3.0) - 1e-4);
  CHECK(raised(wind, 75.5) == relative(1.3 * 0.5 * std::log(3.0), round_off));
  CHECK(raised(wind, 90) == relative(1.3 * 0.5 * std::log(3.0), round_off));
  for (const double height_ft : {31.0, 65.0, 90.0}) {
    CHECK(raised(ice, height_ft) == relative(0.5 * std::log(3.0), round_off));
  }
}

TEST_CASE("slenderness tells above 80 only") {
  CHECK(damage_share(peril(true), exposed(65, 60)) == damage_share(peril(true), exposed(65, 80)));
  CHECK(damage_share(peril(true), exposed(65, 80 - step)) ==
        damage_share(peril(true), exposed(65, 80)));
  CHECK(damage_share(peril(true), exposed(65, 80 + step)) >
        damage_share(peril(true), exposed(65, 80)));
}

TEST_CASE("slenderness is height over diameter up to 110") {
  CHECK(capped_slenderness(50, 6) == relative(100, round_off));
  CHECK(capped_slenderness(55, 6 + step) < 110);
  CHECK(capped_slenderness(55, 6) == relative(110, round_off));
  CHECK(capped_slenderness(55, 6 - step) == 110);
  CHECK(capped_slenderness(12, 0) == 110);
}

TEST_CASE("cuts up to 15 percent open nothing and half removed opens fully") {
  CHECK(opening_of_cut(0.0) == 0.0);
  CHECK(opening_of_cut(0.15 - step) == 0.0);
  CHECK(opening_of_cut(0.15) == 0.0);
  CHECK(opening_of_cut(0.15 + step) == relative(step / 0.35, 1e-9));
  CHECK(opening_of_cut(0.5) == relative(1.0, round_off));
  CHECK(opening_of_cut(0.85) == relative(2.0, round_off));
}

TEST_CASE("an opening closes by equal steps until the recovery ends") {
  CHECK(remaining_opening(0, 5) == 1.0);
  CHECK(remaining_opening(1, 5) == relative(0.8, round_off));
  CHECK(remaining_opening(4, 5) == relative(0.2, round_off));
  CHECK(remaining_opening(5 - step, 5) > 0.0);
  CHECK(remaining_opening(5, 5) == 0.0);
  CHECK(remaining_opening(5 + step, 5) == 0.0);
  CHECK(remaining_opening(1, 1) == 0.0);
}

TEST_CASE("before a table begins a logistic share is nothing and a constant one holds") {
  Exposure before = exposed(65, 110);
  before.timber = false;
  CHECK(damage_share(peril(true), before) == 0.0);
  Peril fire;
  fire.constant_share = 0.7;
  CHECK(damage_share(fire, before) == 0.7);
  CHECK(damage_share(fire, exposed(0)) == 0.7);
  CHECK(damage_share(fire, exposed(80, 110, 1.0)) == 0.7);
}

TEST_CASE("one odds ratio for all leaves constant shares alone") {
  Hazard hazard;
  Peril fire;
  fire.constant_share = 0.7;
  hazard.perils = {peril(true), fire, peril(false)};
  const Hazard changed = with_odds_ratio(hazard, 6.0);
  CHECK(changed.perils[0].logistic->thinning_odds_ratio == 6.0);
  CHECK(changed.perils[2].logistic->thinning_odds_ratio == 6.0);
  CHECK_FALSE(changed.perils[1].logistic.has_value());
  CHECK(damage_share(changed.perils[1], exposed(65, 80, 1.0)) == 0.7);
}

}  // namespace staddle
