// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>
#include <map>

#include "futures/fixture.h"
#include "support/near.h"

// What a hazard remembers of several cuts, seen through the shares of a peril that
// follows the opening alone: logit D = logit 0.12 + (g r) ln 3.5.
namespace staddle::support {
namespace {

constexpr double chance = 0.04;

Peril opening_alone() {
  LogisticShare share;
  share.base_damage_share = 0.12;
  share.thinning_odds_ratio = 3.5;
  share.wind = false;
  Peril ice;
  ice.name = "ice";
  ice.annual_probability = chance;
  ice.logistic = share;
  return ice;
}

double share_at(double opening) {
  const double odds = 0.12 / 0.88 * std::pow(3.5, opening);
  return chance * odds / (1.0 + odds);
}

// The expected share of each year of this plan, by age.
std::map<int, double> shares_of(StandCase stand_case, const Regime& regime, double recovery_yr) {
  stand_case.hazard.perils = {opening_alone()};
  stand_case.hazard.recovery_yr = recovery_yr;
  FuturesOptions options;
  options.futures = 2;
  const FuturesSolution solution = simulate_futures({stand_case, {regime}}, options);
  std::map<int, double> shares;
  for (const YearlyLossShare& year : solution.regimes.at(0).annual_loss) {
    shares[year.at.whole()] = year.with_plan;
  }
  return shares;
}

void check_openings(const std::map<int, double>& shares, const std::map<int, double>& openings) {
  for (const auto& [at, opening] : openings) {
    CAPTURE(at);
    CHECK(shares.at(at) == relative(share_at(opening), round_off));
  }
}

// g of a cut of half is 1, of a quarter 2/7.
const Regime heavy_then_light{{{age(15), 0.5}, {age(18), 0.25}}, age(30)};

}  // namespace

TEST_CASE("the opening that counts is the largest over the cuts") {
  check_openings(shares_of(coastal_case(), heavy_then_light, 5),
                 {{15, 0}, {16, 1}, {17, 0.8}, {18, 0.6},
                  // The lighter cut of 18 does not lower what is left of the heavier one.
                  {19, 0.4}, {20, 0.8 * 2 / 7}, {21, 0.6 * 2 / 7}, {22, 0.4 * 2 / 7},
                  {23, 0.2 * 2 / 7}, {24, 0}, {30, 0}});
}

TEST_CASE("a long recovery carries the memory of a cut past the next ones") {
  check_openings(shares_of(coastal_case(), heavy_then_light, 10),
                 {{16, 1}, {19, 0.7}, {24, 0.2}, {25, 0.4 * 2 / 7}, {26, 0.3 * 2 / 7},
                  {28, 0.1 * 2 / 7}, {29, 0}});
}

TEST_CASE("the thinning of a measured stand is remembered as well") {
  // Two fifths taken at 14: g = 5/7.
  check_openings(shares_of(standing_case(), {{}, age(25)}, 5),
                 {{17, 3.0 / 7}, {18, 2.0 / 7}, {19, 1.0 / 7}, {20, 0}});
  check_openings(shares_of(standing_case(), {{{age(16), 0.25}}, age(25)}, 5),
                 {{17, 3.0 / 7}, {18, 2.0 / 7}, {19, 0.6 * 2 / 7}, {20, 0.4 * 2 / 7}});
}

TEST_CASE("a cut up to 15 percent is not remembered") {
  check_openings(shares_of(coastal_case(), {{{age(15), 0.15}}, age(20)}, 5),
                 {{15, 0}, {16, 0}, {17, 0}});
}

}  // namespace staddle::support
