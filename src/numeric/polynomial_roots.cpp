// SPDX-License-Identifier: GPL-3.0-or-later
#include "numeric/polynomial_roots.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <utility>

#include "staddle/base/contract.h"

namespace staddle::numeric {
namespace {

using Coefficients = std::vector<double>;  // [k]: of x^k

// p(x), divided by x^degree where x > 1: same sign, same roots, and nothing overflows.
double scaled_value(const Coefficients& p, double x) {
  double sum = 0.0;
  if (x > 1.0) {
    const double inverse = 1.0 / x;
    for (const double c : p) sum = sum * inverse + c;
  } else {
    for (std::size_t k = p.size(); k-- > 0;) sum = sum * x + p[k];
  }
  return sum;
}

// -1, 1, or 0 where rounding hides the sign.
int sign_at(const Coefficients& p, double x) {
  Coefficients magnitudes(p.size());
  std::transform(p.begin(), p.end(), magnitudes.begin(), [](double c) { return std::fabs(c); });
  const double rounding = 4.0 * static_cast<double>(p.size()) *
                          std::numeric_limits<double>::epsilon() * scaled_value(magnitudes, x);
  const double value = scaled_value(p, x);
  if (std::fabs(value) <= rounding) return 0;
  return value < 0.0 ? -1 : 1;
}

// The polynomial q of the header for p's first change of sign; empty without one.
Coefficients parting_polynomial(const Coefficients& p) {
  std::size_t previous = p.size();
  for (std::size_t k = 0; k < p.size(); ++k) {
    if (p[k] == 0.0) continue;
    const bool changes = previous < p.size() && (p[k] < 0.0) != (p[previous] < 0.0);
    if (!changes) {
      previous = k;
      continue;
    }
    const double middle = 0.5 * static_cast<double>(previous + k);
    Coefficients q(p.size());
    double largest = 0.0;
    for (std::size_t i = 0; i < p.size(); ++i) {
      q[i] = (static_cast<double>(i) - middle) * p[i];
      largest = std::max(largest, std::fabs(q[i]));
    }
    // Only the roots of q matter, so it is kept near 1 however long the chain.
    for (double& c : q) c /= largest;
    return q;
  }
  return {};
}

// The roots of p inside the interval, given points that part them: between two
// neighbouring points there is at most one.
std::vector<double> roots_between(const Coefficients& p, Bracket interval,
                                  const std::vector<double>& parting_points) {
  const auto value = [&p](double x) { return scaled_value(p, x); };
  std::vector<double> roots;
  double left = interval.low;
  int left_sign = sign_at(p, left);
  bool left_is_root = false;
  for (const double point : parting_points) {
    const int sign = sign_at(p, point);
    if (left_sign * sign < 0) roots.push_back(find_root(value, {left, point}).x);
    if (sign == 0) {
      if (!left_is_root) {
        roots.push_back(point);
      } else if (std::fabs(value(point)) < std::fabs(value(roots.back()))) {
        roots.back() = point;
      }
    }
    left = point;
    left_sign = sign;
    left_is_root = sign == 0;
  }
  if (left_sign * sign_at(p, interval.high) < 0) {
    roots.push_back(find_root(value, {left, interval.high}).x);
  }
  return roots;
}

}  // namespace

std::vector<double> positive_roots(std::span<const double> coefficients, Bracket interval) {
  require(interval.low > 0.0 && interval.low < interval.high && std::isfinite(interval.high),
          "positive_roots needs 0 < low < high");
  require(std::all_of(coefficients.begin(), coefficients.end(),
                      [](double c) { return std::isfinite(c); }),
          "positive_roots needs finite coefficients");

  std::vector<Coefficients> chain;
  for (Coefficients p(coefficients.begin(), coefficients.end()); !p.empty();) {
    Coefficients q = parting_polynomial(p);
    chain.push_back(std::move(p));
    p = std::move(q);
  }
  std::vector<double> roots;
  // The last of the chain does not change sign and has no positive root.
  for (std::size_t level = chain.size(); level-- > 0;) {
    if (level + 1 < chain.size()) roots = roots_between(chain[level], interval, roots);
  }
  return roots;
}

}  // namespace staddle::numeric
