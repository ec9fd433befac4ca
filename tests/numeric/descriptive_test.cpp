// SPDX-License-Identifier: GPL-3.0-or-later
#include "numeric/descriptive.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <vector>

#include "staddle/base/contract.h"
#include "support/seed.h"

namespace staddle::numeric {
namespace {

TEST_CASE("mean and variance of a small sample are those done by hand") {
  const std::vector<double> values = {2, 4, 4, 4, 5, 5, 7, 9};
  CHECK(mean(values) == 5.0);
  CHECK(sample_variance(values) == Approx(32.0 / 7.0).epsilon(1e-15));
}

TEST_CASE("variance keeps its digits when the mean is huge") {
  const std::vector<double> values = {1e9 + 1, 1e9 + 2, 1e9 + 3};
  CHECK(mean(values) == 1e9 + 2);
  CHECK(sample_variance(values) == 1.0);
}

TEST_CASE("quantile of the header example interpolates") {
  CHECK(quantile({1, 2, 4, 8}, 0.25) == 1.75);
}

TEST_CASE("quantile does not depend on the order and takes the ends exactly") {
  CHECK(quantile({8, 1, 4, 2}, 0.25) == 1.75);
  CHECK(quantile({8, 1, 4, 2}, 0.0) == 1.0);
  CHECK(quantile({8, 1, 4, 2}, 1.0) == 8.0);
  CHECK(quantile({3}, 0.7) == 3.0);
  CHECK(quantile({5, 1, 3}, 0.5) == 3.0);
}

TEST_CASE("quantile equals the definition on sorted random values") {
  const support::TaggedSeed seed("quantiles of random values");
  RandomStream random = seed.stream();
  for (int trial = 0; trial < 200; ++trial) {
    std::vector<double> values(1 + random.next_below(30));
    for (double& value : values) value = std::floor(10.0 * random.next_uniform());
    std::vector<double> sorted = values;
    std::sort(sorted.begin(), sorted.end());
    const double fraction = random.next_uniform();
    const double position = static_cast<double>(sorted.size() - 1) * fraction;
    const auto below = static_cast<std::size_t>(position);
    const double above = sorted[std::min(below + 1, sorted.size() - 1)];
    const double share = position - static_cast<double>(below);
    const double expected = sorted[below] + share * (above - sorted[below]);
    CHECK(quantile(values, fraction) == Approx(expected).margin(1e-12));
  }
}

TEST_CASE("descriptive statistics refuse too few or infinite values") {
  CHECK_THROWS_AS(mean(std::vector<double>{}), ContractViolation);
  CHECK_THROWS_AS(sample_variance(std::vector<double>{1.0}), ContractViolation);
  CHECK_THROWS_AS(quantile({}, 0.5), ContractViolation);
  CHECK_THROWS_AS(quantile({1.0}, -0.01), ContractViolation);
  CHECK_THROWS_AS(quantile({1.0}, 1.01), ContractViolation);
  CHECK_THROWS_AS(quantile({1.0, std::nan("")}, 0.5), ContractViolation);
  CHECK_THROWS_AS(mean(std::vector<double>{1.0, INFINITY}), ContractViolation);
}

}  // namespace
}  // namespace staddle::numeric
