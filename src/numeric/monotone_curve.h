// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <vector>

namespace staddle::numeric {

// A smooth curve through given points that rises where they rise and falls where
// they fall: piecewise cubic, so it never overshoots a point (Fritsch & Carlson 1980,
// SIAM J. Numer. Anal. 17:238; slopes at inner points as in Boost.Math pchip: a
// weighted harmonic mean of the two neighbouring chords, 0 where they disagree in
// sign). The end slopes are those of the first and of the last chord.
//
// Worked example: points (0, 0) (1, 1) (2, 4) (3, 9).
//   chords 1, 3, 5; slopes 1, 3/2, 15/4, 5 (inner: harmonic mean, equal spacing).
//   at(1.5) = (1 + 4)/2 + (3/2 - 15/4)/8 = 2.21875.
//
// A value: copies share the immutable points, so they are cheap, and any number of
// threads may evaluate one curve.
class MonotoneCurve {
 public:
  struct Point {
    double x;
    double y;
  };

  // REQUIRES: at least 4 points; x and y finite, x strictly rising, and every chord's
  // slope finite.
  explicit MonotoneCurve(std::vector<Point> points);

  // The curve's height; at a point's x exactly that point's y.
  // REQUIRES: first_x() <= x <= last_x(): it never extrapolates.
  double at(double x) const;

  double first_x() const;
  double last_x() const;

 private:
  struct Spline;
  std::shared_ptr<const Spline> spline_;
};

}  // namespace staddle::numeric
