// SPDX-License-Identifier: GPL-3.0-or-later
#include "numeric/polynomial_roots.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <vector>

#include "staddle/base/contract.h"
#include "support/seed.h"

namespace staddle::numeric {
namespace {

// p(x) (x - root)
std::vector<double> times_factor(const std::vector<double>& p, double root) {
  std::vector<double> product(p.size() + 1, 0.0);
  for (std::size_t k = 0; k < p.size(); ++k) {
    product[k + 1] += p[k];
    product[k] -= root * p[k];
  }
  return product;
}

double value(const std::vector<double>& p, double x) {
  double sum = 0.0;
  for (std::size_t k = p.size(); k-- > 0;) sum = sum * x + p[k];
  return sum;
}

TEST_CASE("polynomial of the header example has the roots one and two") {
  const auto roots = positive_roots(std::vector<double>{2, -3, 1}, {0.01, 11.0});
  REQUIRE(roots.size() == 2);
  CHECK(roots[0] == Approx(1.0).margin(1e-12));
  CHECK(roots[1] == Approx(2.0).margin(1e-12));
}

TEST_CASE("polynomial built from known roots gives them back") {
  const support::TaggedSeed seed("polynomials from known roots");
  RandomStream random = seed.stream();
  for (int trial = 0; trial < 300; ++trial) {
    std::vector<double> known;
    std::vector<double> p = {1.0};
    const auto count = 1 + random.next_below(6);
    for (std::size_t i = 0; i < count; ++i) {
      known.push_back(0.1 + 0.25 * static_cast<double>(i) + 0.2 * random.next_uniform());
      p = times_factor(p, known.back());
    }
    // Factors without a positive root change none of them.
    for (int i = 0; i < 5; ++i) p = times_factor(p, -random.next_uniform());
    const auto roots = positive_roots(p, {0.01, 11.0});
    REQUIRE(roots.size() == known.size());
    for (std::size_t i = 0; i < known.size(); ++i) {
      CHECK(roots[i] == Approx(known[i]).margin(1e-8));
    }
  }
}

TEST_CASE("polynomial of random sparse coefficients has every root a fine grid sees") {
  const support::TaggedSeed seed("sparse polynomials");
  RandomStream random = seed.stream();
  std::vector<double> grid;
  for (double x = 0.0101; x < 11.0; x *= 1.0005) grid.push_back(x);
  for (int trial = 0; trial < 200; ++trial) {
    std::vector<double> p(5 + random.next_below(60), 0.0);
    p[2] = 1.0;  // so that it is never 0 everywhere
    for (double& c : p) {
      if (random.next_uniform() < 0.4) c = 200.0 * random.next_uniform() - 100.0;
    }
    const auto roots = positive_roots(p, {0.01, 11.0});
    CHECK(std::is_sorted(roots.begin(), roots.end()));
    const auto seen = sign_changes([&p](double x) { return value(p, x); }, grid);
    for (const Bracket& bracket : seen) {
      CHECK(std::any_of(roots.begin(), roots.end(), [&bracket](double root) {
        return root >= bracket.low - 1e-9 && root <= bracket.high + 1e-9;
      }));
    }
    // And no root that is none: the sign differs on its two sides.
    CHECK(roots.size() >= seen.size());
    for (const double root : roots) {
      CHECK(value(p, root * (1 - 1e-7)) * value(p, root * (1 + 1e-7)) <= 0.0);
    }
  }
}

TEST_CASE("polynomial with two roots a hair apart keeps both") {
  // (x - 1)(x - 1 - 1e-6) (x + 3)
  const auto p = times_factor(times_factor(times_factor({1.0}, 1.0), 1.0 + 1e-6), -3.0);
  const auto roots = positive_roots(p, {0.01, 11.0});
  REQUIRE(roots.size() == 2);
  CHECK(roots[0] == Approx(1.0).margin(1e-8));
  CHECK(roots[1] == Approx(1.0 + 1e-6).margin(1e-8));
}

TEST_CASE("polynomial that touches zero has that root once") {
  const auto touching = positive_roots(std::vector<double>{121, -220, 100}, {0.01, 11.0});
  REQUIRE(touching.size() == 1);
  CHECK(touching[0] == Approx(1.1).margin(1e-7));
  // (x - 1)^3: the three are one to a double.
  const auto triple = positive_roots(std::vector<double>{-1, 3, -3, 1}, {0.01, 11.0});
  REQUIRE(triple.size() == 1);
  CHECK(triple[0] == Approx(1.0).margin(1e-5));
}

TEST_CASE("polynomial that just misses zero has no root") {
  // 100 (x - 1.1)^2 + 1e-9
  CHECK(positive_roots(std::vector<double>{121 + 1e-9, -220, 100}, {0.01, 11.0}).empty());
}

TEST_CASE("polynomial roots at or beyond the ends are left out") {
  const std::vector<double> p = {2, -3, 1};
  CHECK(positive_roots(p, {1.0, 2.0}).empty());
  CHECK(positive_roots(p, {0.999, 2.0}).size() == 1);
  CHECK(positive_roots(p, {0.999, 2.001}).size() == 2);
  CHECK(positive_roots(p, {3.0, 11.0}).empty());
}

TEST_CASE("polynomial without a change of sign has no positive root") {
  CHECK(positive_roots(std::vector<double>{}, {0.01, 11.0}).empty());
  CHECK(positive_roots(std::vector<double>{0, 0, 0}, {0.01, 11.0}).empty());
  CHECK(positive_roots(std::vector<double>{1, 0, 5}, {0.01, 11.0}).empty());
  CHECK(positive_roots(std::vector<double>{0, -7}, {0.01, 11.0}).empty());
}

TEST_CASE("polynomial of high degree neither overflows nor loses its root") {
  std::vector<double> p(1001, 0.0);
  p[0] = -std::pow(1.5, 200);
  p[200] = 1.0;
  p[1000] = 1e-300;
  const auto roots = positive_roots(p, {0.01, 11.0});
  REQUIRE(roots.size() == 1);
  CHECK(roots[0] == Approx(1.5).epsilon(1e-9));
}

TEST_CASE("polynomial roots refuse an empty interval and infinite coefficients") {
  const std::vector<double> p = {2, -3, 1};
  CHECK_THROWS_AS(positive_roots(p, {0.0, 1.0}), ContractViolation);
  CHECK_THROWS_AS(positive_roots(p, {2.0, 1.0}), ContractViolation);
  CHECK_THROWS_AS(positive_roots(std::vector<double>{1, std::nan("")}, {0.1, 1.0}),
                  ContractViolation);
}

}  // namespace
}  // namespace staddle::numeric
