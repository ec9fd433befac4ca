// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/scale.h"

#include <algorithm>
#include <cmath>

#include "signs/plain_words.h"
#include "staddle/base/contract.h"

namespace staddle {
namespace {

// A tick that arithmetic left a hair beside the end still counts.
constexpr double hair = 1e-9;

double round_step(double span, int most) {
  const double power = std::pow(10.0, std::floor(std::log10(span / most)));
  for (const double factor : {1.0, 2.0, 5.0}) {
    if (span / (factor * power) <= most + hair) return factor * power;
  }
  return 10.0 * power;
}

}  // namespace

std::vector<double> Scale::ticks() const {
  std::vector<double> values;
  const double first = std::ceil(low / step - hair);
  for (double i = first; i * step <= high + hair * step; i += 1.0) values.push_back(i * step);
  return values;
}

Scale round_scale(double low, double high, int most) {
  require(std::isfinite(low) && std::isfinite(high) && low <= high && most > 0,
          "a scale needs finite ends in order");
  if (!(high - low > hair * std::max(1.0, std::fabs(high)))) {
    const double apart = std::max(1.0, 0.1 * std::fabs(high));
    low -= apart;
    high += apart;
  }
  Scale scale;
  scale.step = round_step(high - low, most);
  scale.low = std::floor(low / scale.step + hair) * scale.step;
  scale.high = std::ceil(high / scale.step - hair) * scale.step;
  return scale;
}

Scale year_scale(double low, double high, int most) {
  require(std::isfinite(low) && std::isfinite(high) && low <= high && most > 0,
          "a scale needs finite ends in order");
  if (high - low < 1.0) {
    low -= 1.0;
    high += 1.0;
  }
  Scale scale{low, high, std::max(1.0, round_step(high - low, most))};
  return scale;
}

std::string tick_text(double value, double step, bool years) {
  if (years) return std::to_string(std::lround(value));
  int decimals = 0;
  for (double left = step; left < 1.0 - hair && decimals < 6; left *= 10.0) ++decimals;
  return words::number(value, decimals);
}

}  // namespace staddle
