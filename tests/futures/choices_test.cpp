// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "futures/fixture.h"
#include "staddle/regime/simulate.h"
#include "support/money.h"
#include "support/near.h"

// With an annual probability of one every future is the same, and can be written down.
namespace staddle::support {
namespace {

// The stand of the header's example, 104 ft2/ac at 21, but harvested at 25; every year a
// storm takes this share of what stands.
RegimeFutures every_year(double share, double land_usd_ac, int final_harvest_yr = 25) {
  FuturesProblem problem = header_example();
  problem.stand_case.hazard.perils = {constant_peril(1.0, share)};
  problem.stand_case.land_value = dollars_per_acre(land_usd_ac);
  problem.regimes = {{{}, age(final_harvest_yr)}};
  FuturesOptions options;
  options.futures = 10;
  options.choices = true;
  return simulate_futures(problem, options).regimes.at(0);
}

}  // namespace

TEST_CASE("a stand left with less than thirty square feet is cleared") {
  // In the first year, 29.1 left of 104: 1000 $/ac sold, the lost acres bring nothing.
  const RegimeFutures cleared = every_year(0.72, 0.0);
  CHECK(cleared.choices->chance_cleared == 1.0);
  CHECK(usd(cleared.choices->mean) == relative(0.28 * 1000 * 0.8, round_off));
  CHECK(usd(cleared.mean) < usd(cleared.choices->mean));
}

TEST_CASE("a stand left with more goes on unless clearing is worth more") {
  // Storms too weak for the rule, and a growth faster than their toll.
  FuturesProblem problem = header_example();
  problem.stand_case.costs.rate = DiscountRate::real(0.01);
  problem.stand_case.hazard.perils = {constant_peril(1.0, 0.02)};
  problem.regimes = {{{}, age(25)}};
  FuturesOptions options;
  options.futures = 10;
  options.choices = true;
  RegimeFutures kept = simulate_futures(problem, options).regimes.at(0);
  CHECK(kept.choices->chance_cleared == 0.0);
  CHECK(usd(kept.choices->mean) == usd(kept.mean));

  // Land worth much is worth having at once.
  problem.stand_case.land_value = dollars_per_acre(50'000);
  RegimeFutures cleared = simulate_futures(problem, options).regimes.at(0);
  CHECK(cleared.choices->chance_cleared == 1.0);
  CHECK(usd(cleared.choices->mean) ==
        relative((0.98 * 1000 + 50'000) / 1.01, round_off));
  CHECK(usd(cleared.choices->mean) > usd(cleared.mean));
}

TEST_CASE("the rule of thirty square feet holds within its edge") {
  // At one percent the stand is worth more kept; only the basal area left decides.
  FuturesProblem problem = header_example();
  problem.stand_case.costs.rate = DiscountRate::real(0.01);
  problem.regimes = {{{}, age(22)}};
  FuturesOptions options;
  options.futures = 10;
  options.choices = true;
  const double basal_area =
      grow_unthinned(problem.stand_case, age(21))[1].measures.basal_area.in(square_feet_per_acre);
  const auto chance_cleared = [&](double left_ft2_ac) {
    // Rare enough that going on is worth more, common enough to be met.
    problem.stand_case.hazard.perils = {constant_peril(0.01, 1.0 - left_ft2_ac / basal_area)};
    options.futures = 2000;
    return simulate_futures(problem, options).regimes.at(0).choices->chance_cleared;
  };
  CHECK(chance_cleared(30.0 + 1e-6) == 0.0);
  CHECK(chance_cleared(30.0 - 1e-6) == within(0.01, 4 * 0.00223));
  CHECK(chance_cleared(30.0 - 1e-6) > 0.0);
}

TEST_CASE("nothing is cleared in the year of the harvest") {
  const RegimeFutures futures = every_year(0.9, 1'000.0, 21);
  CHECK(futures.choices->chance_cleared == 0.0);
  CHECK(usd(futures.choices->mean) == usd(futures.mean));
}

TEST_CASE("nothing is left to clear after a total loss") {
  const RegimeFutures futures = every_year(1.0, 1'000.0);
  CHECK(futures.choices->chance_cleared == 0.0);
  CHECK(usd(futures.choices->mean) == relative(800, round_off));
}

}  // namespace staddle::support
