// SPDX-License-Identifier: GPL-3.0-or-later
#include "numeric/descriptive.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>

#include "staddle/base/contract.h"

namespace staddle::numeric {
namespace {

void require_finite(std::span<const double> values) {
  require(std::all_of(values.begin(), values.end(), [](double x) { return std::isfinite(x); }),
          "descriptive statistics need finite values");
}

}  // namespace

double mean(std::span<const double> values) {
  require(!values.empty(), "a mean needs at least one value");
  require_finite(values);
  const double count = static_cast<double>(values.size());
  const double first_guess = std::accumulate(values.begin(), values.end(), 0.0) / count;
  // The mean of the deviations from the first guess gives back what rounding took.
  double deviations = 0.0;
  for (const double value : values) deviations += value - first_guess;
  return first_guess + deviations / count;
}

double sample_variance(std::span<const double> values) {
  require(values.size() >= 2, "a sample variance needs at least two values");
  const double centre = mean(values);
  double squares = 0.0;
  for (const double value : values) squares += (value - centre) * (value - centre);
  return squares / static_cast<double>(values.size() - 1);
}

double quantile(std::vector<double> values, double fraction) {
  require(!values.empty(), "a quantile needs at least one value");
  require(fraction >= 0.0 && fraction <= 1.0, "a quantile needs a fraction from 0 to 1");
  require_finite(values);
  const double position = static_cast<double>(values.size() - 1) * fraction;
  const auto below = static_cast<std::ptrdiff_t>(std::floor(position));
  const auto lower = values.begin() + below;
  std::nth_element(values.begin(), lower, values.end());
  const double share = position - std::floor(position);
  if (share == 0.0) return *lower;
  const double upper = *std::min_element(lower + 1, values.end());
  return *lower + share * (upper - *lower);
}

}  // namespace staddle::numeric
