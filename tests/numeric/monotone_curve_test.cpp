// SPDX-License-Identifier: GPL-3.0-or-later
#include "numeric/monotone_curve.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <thread>
#include <vector>

#include "staddle/base/contract.h"
#include "support/seed.h"

namespace staddle::numeric {
namespace {

using Points = std::vector<MonotoneCurve::Point>;

const Points squares = {{0, 0}, {1, 1}, {2, 4}, {3, 9}};

Points random_points(RandomStream& random, std::size_t count, bool rising) {
  Points points;
  double x = 10.0 * random.next_uniform();
  double y = 0.0;
  for (std::size_t i = 0; i < count; ++i) {
    points.push_back({x, y});
    x += 0.1 + 5.0 * random.next_uniform();
    y += rising ? 10.0 * random.next_uniform() : 20.0 * random.next_uniform() - 10.0;
  }
  return points;
}

TEST_CASE("curve reproduces the header example") {
  CHECK(MonotoneCurve(squares).at(1.5) == 2.21875);
}

TEST_CASE("curve goes exactly through its points") {
  const support::TaggedSeed seed("curve through random points");
  RandomStream random = seed.stream();
  for (int trial = 0; trial < 50; ++trial) {
    const Points points = random_points(random, 4 + random.next_below(20), false);
    const MonotoneCurve curve(points);
    CHECK(curve.first_x() == points.front().x);
    CHECK(curve.last_x() == points.back().x);
    for (const auto& point : points) CHECK(curve.at(point.x) == point.y);
  }
}

TEST_CASE("curve stays between neighbouring points and rises with them") {
  const support::TaggedSeed seed("curve between random points");
  RandomStream random = seed.stream();
  for (int trial = 0; trial < 50; ++trial) {
    const bool rising = trial % 2 == 0;
    const Points points = random_points(random, 12, rising);
    const MonotoneCurve curve(points);
    for (std::size_t i = 1; i < points.size(); ++i) {
      const double low = std::min(points[i - 1].y, points[i].y) - 1e-12;
      const double high = std::max(points[i - 1].y, points[i].y) + 1e-12;
      double previous = curve.at(points[i - 1].x);
      for (int step = 1; step <= 20; ++step) {
        const double x = points[i - 1].x + (points[i].x - points[i - 1].x) * step / 20.0;
        const double y = curve.at(std::min(x, curve.last_x()));
        CHECK(y >= low);
        CHECK(y <= high);
        if (rising) CHECK(y >= previous - 1e-12);
        previous = y;
      }
    }
  }
}

TEST_CASE("curve leaves its ends along the first and the last chord") {
  const MonotoneCurve curve(squares);
  const double step = 1e-6;
  CHECK(curve.at(step) / step == Approx(1.0).margin(1e-5));
  CHECK((9.0 - curve.at(3.0 - step)) / step == Approx(5.0).margin(1e-5));
}

TEST_CASE("curve through points of a line is that line") {
  const MonotoneCurve line(Points{{1, 5}, {2, 3}, {4, -1}, {7, -7}});
  for (double x = 1.0; x <= 7.0; x += 0.125) CHECK(line.at(x) == Approx(7.0 - 2.0 * x));
}

TEST_CASE("curve refuses to extrapolate by even the smallest step") {
  const MonotoneCurve curve(squares);
  const double beyond = std::nextafter(3.0, 4.0);
  const double before = std::nextafter(0.0, -1.0);
  CHECK_NOTHROW(curve.at(std::nextafter(3.0, 0.0)));
  CHECK_THROWS_AS(curve.at(beyond), ContractViolation);
  CHECK_THROWS_AS(curve.at(before), ContractViolation);
  CHECK_THROWS_AS(curve.at(std::nan("")), ContractViolation);
}

TEST_CASE("curve refuses points that make no curve") {
  const double infinite = std::numeric_limits<double>::infinity();
  const double huge = std::numeric_limits<double>::max();
  const auto make = [](Points points) { return MonotoneCurve(std::move(points)); };
  CHECK_THROWS_AS(make({}), ContractViolation);
  CHECK_THROWS_AS(make({{0, 0}, {1, 1}, {2, 2}}), ContractViolation);
  CHECK_THROWS_AS(make({{0, 0}, {1, 1}, {1, 2}, {2, 3}}), ContractViolation);
  CHECK_THROWS_AS(make({{0, 0}, {2, 1}, {1, 2}, {3, 3}}), ContractViolation);
  CHECK_THROWS_AS(make({{0, 0}, {1, infinite}, {2, 2}, {3, 3}}), ContractViolation);
  CHECK_THROWS_AS(make({{0, 0}, {1, std::nan("")}, {2, 2}, {3, 3}}), ContractViolation);
  CHECK_THROWS_AS(make({{0, -huge}, {1, huge}, {2, huge}, {3, huge}}), ContractViolation);
}

TEST_CASE("copies of a curve outlive it and threads may share it") {
  std::vector<double> heights(4, 0.0);
  {
    auto original = std::make_unique<MonotoneCurve>(squares);
    const MonotoneCurve copy = *original;
    original.reset();
    std::vector<std::jthread> threads;
    for (double& height : heights) {
      threads.emplace_back([&height, &copy] { height = copy.at(1.5); });
    }
  }
  CHECK(heights == std::vector<double>(4, 2.21875));
}

}  // namespace
}  // namespace staddle::numeric
