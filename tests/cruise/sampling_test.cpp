// SPDX-License-Identifier: GPL-3.0-or-later
#include "cruise/sampling.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "numeric/student_t.h"
#include "staddle/base/contract.h"
#include "support/near.h"

namespace staddle {
namespace {

using support::relative;
using support::round_off;
using support::within;

TEST_CASE("header example of an estimate") {
  const SampleMean sample = sample_mean({{1.0, {80, 100, 120}}});
  CHECK(sample.mean == 100);
  CHECK(sample.standard_error == within(11.547, 0.0005));
  CHECK(sample.spread / sample.mean == relative(0.2, round_off));
  const auto [low, high] = interval_of(sample, 0.90);
  CHECK(low == within(66.28, 0.005));
  CHECK(high == within(133.72, 0.005));
}

TEST_CASE("a single plot has a mean and no known error") {
  const SampleMean sample = sample_mean({{0.5, {80, 100}}, {0.5, {60}}});
  CHECK(sample.mean == 75);
  CHECK_FALSE(sample.error_known());
  CHECK_THROWS_AS(interval_of(sample, 0.9), ContractViolation);
}

TEST_CASE("plots that are all alike have an interval of no width") {
  const SampleMean sample = sample_mean({{1.0, {90, 90, 90}}});
  CHECK(sample.error_known());
  CHECK(interval_of(sample, 0.95).first == 90);
  CHECK(interval_of(sample, 0.95).second == 90);
}

TEST_CASE("two strata of equal weight count and variance keep nearly all degrees of freedom") {
  const SampleMean sample = sample_mean({{0.5, {80, 100, 120}}, {0.5, {180, 200, 220}}});
  CHECK(sample.mean == 150);
  CHECK(sample.degrees_of_freedom == 4);
  CHECK(sample.standard_error == relative(20 / std::sqrt(6), round_off));
}

TEST_CASE("strata explain what differs between them") {
  const SampleMean whole = sample_mean({{1.0, {80, 100, 120, 180, 200, 220}}});
  const SampleMean parted = sample_mean({{0.5, {80, 100, 120}}, {0.5, {180, 200, 220}}});
  CHECK(whole.mean == relative(parted.mean, round_off));
  CHECK(parted.standard_error < 0.5 * whole.standard_error);
}

TEST_CASE("a stratum counts by its weight and not by its plots") {
  const SampleMean sample = sample_mean({{0.9, {100, 100}}, {0.1, {0, 0, 0, 0, 0, 0}}});
  CHECK(sample.mean == relative(90, round_off));
}

TEST_CASE("the plots needed are the fewest that keep to the error") {
  for (const double cv : {0.05, 0.2, 0.35, 0.8}) {
    for (const int strata : {1, 3}) {
      CAPTURE(cv, strata);
      const auto plots = plots_needed(cv, strata, 0.10, 0.90);
      REQUIRE(plots);
      const auto error_with = [&](int n) {
        return numeric::two_sided_student_t(0.90, n - strata) * cv / std::sqrt(n);
      };
      CHECK(error_with(*plots) <= 0.10);
      if (*plots > strata + 1) CHECK(error_with(*plots - 1) > 0.10);
    }
  }
}

TEST_CASE("plots without variation need one plot more than there are strata") {
  CHECK(plots_needed(0.0, 1, 0.10, 0.90) == 2);
  CHECK(plots_needed(0.0, 4, 0.10, 0.90) == 5);
}

TEST_CASE("an error that no cruise can reach has no number of plots") {
  CHECK_FALSE(plots_needed(1.0, 1, 1e-4, 0.95));
}

}  // namespace
}  // namespace staddle
