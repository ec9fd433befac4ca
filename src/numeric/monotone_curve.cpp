// SPDX-License-Identifier: GPL-3.0-or-later
#include "numeric/monotone_curve.h"

#include <cmath>
#include <cstddef>

#include "numeric/boost_pchip.h"
#include "staddle/base/contract.h"

namespace staddle::numeric {

struct MonotoneCurve::Spline {
  double first_x;
  double last_x;
  boost::math::interpolators::pchip<std::vector<double>> curve;
};

namespace {

void require_sound(const std::vector<MonotoneCurve::Point>& points) {
  require(points.size() >= 4, "MonotoneCurve needs at least 4 points");
  for (std::size_t i = 0; i < points.size(); ++i) {
    require(std::isfinite(points[i].x) && std::isfinite(points[i].y),
            "MonotoneCurve needs finite points");
    if (i == 0) continue;
    require(points[i].x > points[i - 1].x, "MonotoneCurve needs strictly rising x");
    const double slope = (points[i].y - points[i - 1].y) / (points[i].x - points[i - 1].x);
    require(std::isfinite(slope), "MonotoneCurve needs finite slopes between its points");
  }
}

}  // namespace

MonotoneCurve::MonotoneCurve(std::vector<Point> points) {
  require_sound(points);
  std::vector<double> x;
  std::vector<double> y;
  x.reserve(points.size());
  y.reserve(points.size());
  for (const Point& point : points) {
    x.push_back(point.x);
    y.push_back(point.y);
  }
  spline_ = std::make_shared<const Spline>(
      Spline{points.front().x, points.back().x, {std::move(x), std::move(y)}});
}

double MonotoneCurve::at(double x) const {
  require(x >= spline_->first_x && x <= spline_->last_x,
          "MonotoneCurve is evaluated between its first and its last point only");
  return spline_->curve(x);
}

double MonotoneCurve::first_x() const { return spline_->first_x; }
double MonotoneCurve::last_x() const { return spline_->last_x; }

}  // namespace staddle::numeric
