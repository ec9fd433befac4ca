// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/futures/simulate_futures.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <thread>

#include "futures/describe.h"
#include "futures/fixture.h"
#include "staddle/regime/simulate.h"
#include "support/money.h"
#include "support/near.h"
#include "support/seed.h"

namespace staddle::support {
namespace {

// A mean of futures lies this many of its standard errors from the expected value at
// most: past it by chance in one case of 16,000.
constexpr double far_errors = 4.0;

FuturesOptions drawing(std::uint64_t futures, std::uint64_t seed = 1) {
  FuturesOptions options;
  options.futures = futures;
  options.seed = seed;
  return options;
}

RegimeFutures futures_of(const StandCase& stand_case, const Regime& regime,
                         const FuturesOptions& options) {
  return simulate_futures({stand_case, {regime}}, options).regimes.at(0);
}

const Regime two_thinnings{{{age(15), 0.4}, {age(21), 0.3}}, age(32)};

}  // namespace

TEST_CASE("the example of the header comes out") {
  const FuturesSolution solution = simulate_futures(header_example(), drawing(40'000));
  REQUIRE(solution.status == FuturesSolution::Status::finished);
  const RegimeFutures& regime = solution.regimes.at(0);
  CHECK(usd(regime.expected_value) == relative(710, round_off));
  CHECK(usd(regime.quantiles.p05) == relative(440, round_off));
  CHECK(usd(regime.quantiles.p95) == relative(800, round_off));
  CHECK(regime.chance_half_lost == within(0.25, far_errors * std::sqrt(0.25 * 0.75 / 40'000)));
  // Two outcomes only: the mean follows from their counts.
  CHECK(usd(regime.mean) == relative(800 - 360 * regime.chance_half_lost, round_off));
  REQUIRE(regime.worst_event);
  CHECK(regime.worst_event->at == age(21));
  CHECK(regime.worst_event->peril == "fire");
  CHECK(usd(regime.worst_event->loss) == relative(450, round_off));
  REQUIRE(regime.annual_loss.size() == 1);
  CHECK(regime.annual_loss[0].with_plan == relative(0.125, round_off));
}

TEST_CASE("the mean of the futures lies within four standard errors of the expected value") {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    CAPTURE(seed);
    for (const StandCase& stand_case : {coastal_case(), standing_case()}) {
      const Regime regime = stand_case.standing
                                ? Regime{{{age(20), 0.33}}, age(33)}
                                : two_thinnings;
      const RegimeFutures futures = futures_of(stand_case, regime, drawing(20'000, seed));
      REQUIRE(futures.difference_in_standard_errors);
      CHECK(std::fabs(*futures.difference_in_standard_errors) < far_errors);
      CHECK(usd(futures.expected_value) == usd(evaluate(stand_case, regime).objective));
      CHECK(usd(futures.mean - futures.expected_value) ==
            relative(*futures.difference_in_standard_errors * usd(futures.standard_error),
                     two_methods));
    }
  }
}

TEST_CASE("random stands and regimes agree with the evaluator in the mean") {
  const TaggedSeed seed("futures of random stands");
  for (std::uint64_t number = 0; number < 60; ++number) {
    CAPTURE(number);
    RandomStream random = seed.stream(number);
    const FuturesProblem problem = random_problem(random);
    const FuturesSolution solution = simulate_futures(problem, drawing(20'000, 7));
    for (const RegimeFutures& regime : solution.regimes) {
      if (!regime.difference_in_standard_errors) continue;
      CHECK(std::fabs(*regime.difference_in_standard_errors) < far_errors);
    }
  }
}

TEST_CASE("the same bytes come out whatever the number of threads") {
  FuturesProblem problem{coastal_case(), {two_thinnings, {{}, age(27)}}};
  FuturesOptions options = drawing(30'001, 5);
  options.choices = true;
  options.threads = 1;
  const std::string alone = describe(simulate_futures(problem, options));
  for (const unsigned threads : {2u, 3u, 8u, 0u}) {
    options.threads = threads;
    CHECK(describe(simulate_futures(problem, options)) == alone);
  }
  options.threads = 1;
  options.seed = 6;
  CHECK(describe(simulate_futures(problem, options)) != alone);
}

TEST_CASE("every regime meets the same storms") {
  // A plan alone, and the same one beside others.
  const StandCase stand_case = coastal_case();
  const FuturesOptions options = drawing(5'000, 11);
  const std::string alone = describe({{}, {futures_of(stand_case, two_thinnings, options)}});
  const FuturesSolution beside =
      simulate_futures({stand_case, {{{}, age(45)}, two_thinnings, {{}, age(20)}}}, options);
  CHECK(describe({{}, {beside.regimes.at(1)}}) == alone);

  // A total loss of every storm: half the stand is lost where any storm came by, and a
  // longer plan meets the storms of a shorter one.
  StandCase all_or_nothing = stand_case;
  all_or_nothing.hazard.perils = {constant_peril(0.02, 1.0)};
  const FuturesSolution nested = simulate_futures(
      {all_or_nothing, {{{}, age(25)}, {{}, age(26)}, {{}, age(40)}}}, options);
  const auto chance = [&](std::size_t i) { return nested.regimes.at(i).chance_half_lost; };
  CHECK(chance(0) <= chance(1));
  CHECK(chance(1) <= chance(2));
  CHECK(chance(1) - chance(0) < 0.03);
}

TEST_CASE("without perils every future is the calm one") {
  StandCase calm = coastal_case();
  calm.hazard.perils.clear();
  FuturesOptions options = drawing(50);
  options.choices = true;
  const RegimeFutures futures = futures_of(calm, two_thinnings, options);
  const double expected = usd(evaluate(calm, two_thinnings).objective);
  CHECK(usd(futures.mean) == relative(expected, round_off));
  CHECK(usd(futures.quantiles.p05) == usd(futures.quantiles.p95));
  CHECK(usd(futures.standard_error) == 0.0);
  CHECK_FALSE(futures.difference_in_standard_errors.has_value());
  CHECK_FALSE(futures.worst_event.has_value());
  CHECK(futures.chance_half_lost == 0.0);
  CHECK(usd(futures.choices->mean) == usd(futures.mean));
  CHECK(futures.choices->chance_cleared == 0.0);
  CHECK(futures.annual_loss.size() == 32);
}

TEST_CASE("a stand cut today meets no storm") {
  const StandCase stand_case = standing_case();
  const RegimeFutures futures = futures_of(stand_case, {{}, age(16)}, drawing(10));
  CHECK(usd(futures.quantiles.p05) ==
        relative(usd(evaluate(stand_case, {{}, age(16)}).objective), round_off));
  CHECK(futures.annual_loss.empty());
}

TEST_CASE("half the stand is lost at half and by several storms together") {
  StandCase stand_case = coastal_case();
  const auto chance = [&](double share, double probability) {
    stand_case.hazard.perils = {constant_peril(probability, share)};
    return futures_of(stand_case, {{}, age(25)}, drawing(4'000)).chance_half_lost;
  };
  // One storm of 50 percent is enough, of 49.9 two are needed.
  CHECK(chance(0.5, 0.02) > chance(0.499, 0.02));
  CHECK(chance(0.499, 0.02) > 0.0);
  CHECK(chance(0.01, 1.0) == 0.0);   // 0.99^25 = 0.778 left
  CHECK(chance(0.03, 1.0) == 1.0);   // 0.97^25 = 0.467 left
}

TEST_CASE("the plan and the unthinned stand are told apart year by year") {
  const StandCase stand_case = coastal_case();
  const Regime one{{{age(15), 0.5}}, age(30)};
  const RegimeFutures futures = futures_of(stand_case, one, drawing(10));
  const RegimeReport report = simulate(stand_case, stated("", one)).value();
  const std::vector<YearRecord> unthinned = grow_unthinned(stand_case, age(30));
  REQUIRE(futures.annual_loss.size() == 30);
  for (std::size_t i = 0; i < 30; ++i) {
    const YearlyLossShare& year = futures.annual_loss[i];
    CAPTURE(year.at.whole());
    CHECK(year.at == report.years[i + 1].at);
    CHECK(year.with_plan == relative(report.years[i + 1].expected_loss_share, round_off));
    REQUIRE(year.unthinned);
    CHECK(*year.unthinned == relative(unthinned[i + 1].expected_loss_share, round_off));
    if (year.at > age(15) && year.at <= age(20)) CHECK(year.with_plan > *year.unthinned);
    if (year.at <= age(15)) CHECK(year.with_plan == *year.unthinned);
  }
}

TEST_CASE("a stop request leaves the regimes that were finished") {
  std::stop_source source;
  FuturesOptions options = drawing(100'000);
  options.threads = 1;
  options.stop = source.get_token();
  const std::thread::id caller = std::this_thread::get_id();
  double last = 0.0;
  options.progress = [&](double done) {
    CHECK(std::this_thread::get_id() == caller);
    CHECK(done >= last);
    last = done;
    if (done > 0.6) source.request_stop();
  };
  const FuturesProblem problem{coastal_case(), {two_thinnings, {{}, age(27)}}};
  const FuturesSolution solution = simulate_futures(problem, options);
  CHECK(solution.status == FuturesSolution::Status::stopped);
  REQUIRE(solution.regimes.size() == 1);
  options.stop = {};
  options.progress = [&](double done) { last = done; };
  CHECK(describe({{}, {simulate_futures(problem, options).regimes.at(0)}}) ==
        describe({{}, solution.regimes}));
  CHECK(last == 1.0);
}

TEST_CASE("the number of futures keeps its limits") {
  CHECK_THROWS_AS(simulate_futures(header_example(), drawing(1)), ContractViolation);
  CHECK_THROWS_AS(simulate_futures(header_example(), drawing(10'000'001)), ContractViolation);
  CHECK(simulate_futures(header_example(), drawing(2)).regimes.size() == 1);
}

}  // namespace staddle::support
