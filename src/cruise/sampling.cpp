// SPDX-License-Identifier: GPL-3.0-or-later
#include "cruise/sampling.h"

#include <algorithm>
#include <cmath>

#include "numeric/descriptive.h"
#include "numeric/student_t.h"
#include "staddle/base/contract.h"
#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

// Satterthwaite's: (sum g)^2 / sum(g^2 / (n - 1)), g = W^2 s^2 / n, rounded down; without
// any variation all the plots beyond one per stratum.
int effective_degrees_of_freedom(const std::vector<StratumValues>& strata,
                                 const std::vector<double>& variances) {
  double sum = 0.0;
  double squares = 0.0;
  int plain = 0;
  for (std::size_t h = 0; h < strata.size(); ++h) {
    const double count = static_cast<double>(strata[h].values.size());
    const double share = strata[h].weight * strata[h].weight * variances[h] / count;
    sum += share;
    squares += share * share / (count - 1.0);
    plain += static_cast<int>(strata[h].values.size()) - 1;
  }
  if (squares <= 0.0) return plain;
  // A whole number that rounding left just below itself is that whole number.
  return std::clamp(static_cast<int>(sum * sum / squares + tolerance::limit_slack), 1, plain);
}

}  // namespace

SampleMean sample_mean(const std::vector<StratumValues>& strata) {
  require(!strata.empty(), "a sample has a stratum");
  SampleMean result;
  std::vector<double> variances;
  double spread_squared = 0.0;
  double error_squared = 0.0;
  bool known = true;
  for (const StratumValues& stratum : strata) {
    require(!stratum.values.empty(), "a stratum has a plot");
    result.mean += stratum.weight * numeric::mean(stratum.values);
    if (stratum.values.size() < 2) {
      known = false;
      continue;
    }
    const double variance = numeric::sample_variance(stratum.values);
    variances.push_back(variance);
    spread_squared += stratum.weight * variance;
    error_squared +=
        stratum.weight * stratum.weight * variance / static_cast<double>(stratum.values.size());
  }
  if (!known) return result;
  result.spread = std::sqrt(spread_squared);
  result.standard_error = std::sqrt(error_squared);
  result.degrees_of_freedom = effective_degrees_of_freedom(strata, variances);
  return result;
}

std::pair<double, double> interval_of(const SampleMean& sample, double confidence) {
  require(sample.error_known(), "an interval needs a known error");
  const double half =
      numeric::two_sided_student_t(confidence, sample.degrees_of_freedom) * sample.standard_error;
  return {sample.mean - half, sample.mean + half};
}

std::optional<int> plots_needed(double coefficient_of_variation, int strata, double error,
                                double confidence) {
  require(coefficient_of_variation >= 0.0 && error > 0.0 && strata >= 1,
          "plots needed ask for a variation, an error and a stratum");
  constexpr int most = 1'000'000;
  const auto enough = [&](int plots) {
    const double t = numeric::two_sided_student_t(confidence, plots - strata);
    return t * coefficient_of_variation / std::sqrt(static_cast<double>(plots)) <= error;
  };
  int high = strata + 1;
  while (high < most && !enough(high)) high = std::min(most, 2 * high);
  if (!enough(high)) return std::nullopt;
  int low = strata;  // never enough: no degree of freedom
  while (high - low > 1) {
    const int middle = low + (high - low) / 2;
    (enough(middle) ? high : low) = middle;
  }
  return high;
}

}  // namespace staddle
