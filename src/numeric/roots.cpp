// SPDX-License-Identifier: GPL-3.0-or-later
#include "numeric/roots.h"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstddef>
#include <cstdint>

#include "staddle/base/contract.h"
#include "staddle/base/tolerance.h"

namespace staddle::numeric {
namespace {

double finite_value(const std::function<double(double)>& f, double x) {
  const double value = f(x);
  require(std::isfinite(value), "a root is sought of a function that is finite");
  return value;
}

bool narrow_enough(double low, double high) {
  const double scale = std::max(1.0, std::min(std::fabs(low), std::fabs(high)));
  return high - low <= tolerance::root * scale;
}

}  // namespace

Root find_root(const std::function<double(double)>& f, Bracket bracket) {
  require(-1e100 <= bracket.low && bracket.low <= bracket.high && bracket.high <= 1e100,
          "find_root needs -1e100 <= low <= high <= 1e100");
  const double f_low = finite_value(f, bracket.low);
  if (f_low == 0.0) return {bracket.low, {bracket.low, bracket.low}};
  const double f_high = finite_value(f, bracket.high);
  if (f_high == 0.0) return {bracket.high, {bracket.high, bracket.high}};
  require((f_low < 0.0) != (f_high < 0.0), "find_root needs a change of sign");

  // Every few steps the algorithm halves the bracket, so that even the widest one of
  // doubles is narrowed well before this many calls.
  std::uintmax_t calls = 10'000;
  const auto [low, high] =
      boost::math::tools::toms748_solve([&f](double x) { return finite_value(f, x); }, bracket.low,
                                        bracket.high, f_low, f_high, narrow_enough, calls);
  const bool low_is_nearer = std::fabs(finite_value(f, low)) <= std::fabs(finite_value(f, high));
  return {low_is_nearer ? low : high, {low, high}};
}

std::vector<Bracket> sign_changes(const std::function<double(double)>& f,
                                  std::span<const double> grid) {
  std::vector<Bracket> found;
  double previous = 0.0;
  for (std::size_t i = 0; i < grid.size(); ++i) {
    require(i == 0 || grid[i] > grid[i - 1], "sign_changes needs a strictly rising grid");
    const double value = finite_value(f, grid[i]);
    if (value == 0.0) {
      found.push_back({grid[i], grid[i]});
    } else if (previous != 0.0 && (value < 0.0) != (previous < 0.0)) {
      found.push_back({grid[i - 1], grid[i]});
    }
    previous = value;
  }
  return found;
}

}  // namespace staddle::numeric
