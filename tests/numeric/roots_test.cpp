// SPDX-License-Identifier: GPL-3.0-or-later
#include "numeric/roots.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <vector>

#include "staddle/base/contract.h"
#include "staddle/base/tolerance.h"

namespace staddle::numeric {
namespace {

double parabola(double x) { return x * x - 2.0; }

TEST_CASE("root of the header example is the square root of two") {
  const Root root = find_root(parabola, {1.0, 2.0});
  CHECK(root.x == Approx(std::sqrt(2.0)).margin(1.5e-12));
}

TEST_CASE("root comes with a bracket as narrow as the tolerance says") {
  for (const double scale : {1e-6, 1.0, 1e9}) {
    const auto f = [scale](double x) { return std::expm1(x / scale) - 1.0; };
    const Root root = find_root(f, {0.0, 3.0 * scale});
    const double width = root.bracket.high - root.bracket.low;
    CHECK(width <= tolerance::root * std::max(1.0, std::fabs(root.x)));
    CHECK(root.bracket.low <= root.x);
    CHECK(root.x <= root.bracket.high);
    CHECK(f(root.bracket.low) * f(root.bracket.high) <= 0.0);
    CHECK(root.x / scale == Approx(std::log(2.0)).margin(1e-5));
  }
}

TEST_CASE("root at an end of the bracket is returned exactly") {
  const auto f = [](double x) { return x - 1.0; };
  CHECK(find_root(f, {1.0, 5.0}).x == 1.0);
  CHECK(find_root(f, {-5.0, 1.0}).x == 1.0);
  CHECK(find_root(f, {1.0, 1.0}).x == 1.0);
}

TEST_CASE("root of a step and of a very wide bracket is found") {
  const auto step = [](double x) { return x < 0.3 ? -1.0 : 1.0; };
  const Root jump = find_root(step, {0.0, 1.0});
  CHECK(jump.bracket.low < 0.3);
  CHECK(jump.bracket.high >= 0.3);
  const auto cube_root = [](double x) { return std::cbrt(x - 7.0); };
  CHECK(find_root(cube_root, {-1e100, 1e100}).x == Approx(7.0).margin(1e-11));
}

TEST_CASE("root is refused without a change of sign or with infinite values") {
  CHECK_THROWS_AS(find_root(parabola, {2.0, 3.0}), ContractViolation);
  CHECK_THROWS_AS(find_root(parabola, {2.0, 1.0}), ContractViolation);
  CHECK_THROWS_AS(find_root(parabola, {1.0, 1.1e100}), ContractViolation);
  CHECK_THROWS_AS(find_root([](double x) { return 1.0 / x; }, {0.0, 1.0}), ContractViolation);
  const auto gap = [](double x) { return std::fabs(x) < 0.9 ? std::nan("") : x; };
  CHECK_THROWS_AS(find_root(gap, {-1.0, 1.0}), ContractViolation);
}

TEST_CASE("sign changes are listed in order with exact zeros once") {
  const auto f = [](double x) { return x * (x - 1.5) * (x - 2.5); };
  const std::vector<double> grid = {-1, 0, 1, 2, 3};
  const std::vector<Bracket> found = sign_changes(f, grid);
  REQUIRE(found.size() == 3);
  CHECK(found[0].low == 0.0);
  CHECK(found[0].high == 0.0);
  CHECK(found[1].low == 1.0);
  CHECK(found[1].high == 2.0);
  CHECK(found[2].low == 2.0);
  CHECK(found[2].high == 3.0);
}

TEST_CASE("sign changes of a function without roots are none") {
  CHECK(sign_changes([](double) { return 1.0; }, std::vector<double>{0, 1, 2}).empty());
  CHECK(sign_changes(parabola, std::vector<double>{}).empty());
  CHECK_THROWS_AS(sign_changes(parabola, std::vector<double>{0, 0}), ContractViolation);
}

}  // namespace
}  // namespace staddle::numeric
