// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <utility>
#include <vector>

namespace staddle {

// The values of one thing on the plots of one stratum.
struct StratumValues {
  double weight = 1.0;  // the weights of all strata sum to 1
  std::vector<double> values;
};

// A mean with what is known of its error, as appraisal.h defines it.
struct SampleMean {
  double mean = 0.0;
  double spread = 0.0;  // sqrt(sum W s^2), of single plots within their strata
  double standard_error = 0.0;
  int degrees_of_freedom = 0;  // 0: a stratum has a single plot, nothing is known
  bool error_known() const { return degrees_of_freedom > 0; }
};

// REQUIRES: at least one stratum, each with a plot.
SampleMean sample_mean(const std::vector<StratumValues>& strata);

// Low and high end of the interval that holds the true mean with this confidence.
// REQUIRES: the error is known.
std::pair<double, double> interval_of(const SampleMean& sample, double confidence);

// The fewest plots n for which t(confidence, n - strata) x cv / sqrt(n) <= error: since t
// falls as n rises, the point at which iterating n = (t cv / error)^2 comes to rest.
// Absent beyond a million. REQUIRES: cv >= 0, error > 0, strata >= 1.
std::optional<int> plots_needed(double coefficient_of_variation, int strata, double error,
                                double confidence);

}  // namespace staddle
