// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/regime_pool_filter.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

constexpr std::size_t rows_before_first_drop = 2048;
constexpr std::size_t probes_of_points = 24;
// Rows against which, in the end, all others are held.
constexpr std::size_t most_final_pivots = 96;

}  // namespace

DominanceFilter::DominanceFilter(std::size_t width, std::span<const double> points)
    : width_(width), drop_at_(rows_before_first_drop) {
  std::vector<double> low(points.begin(), points.begin() + static_cast<std::ptrdiff_t>(width));
  std::vector<double> high = low;
  const std::size_t count = points.size() / width;
  for (std::size_t i = 0; i < points.size(); ++i) {
    low[i % width] = std::min(low[i % width], points[i]);
    high[i % width] = std::max(high[i % width], points[i]);
  }
  for (std::size_t j = 0; j < width; ++j) {
    centre_.push_back(low[j] + (high[j] - low[j]) / 2.0);
    half_width_.push_back((high[j] - low[j]) / 2.0);
  }
  probes_ = {centre_, low, high};
  const std::size_t stride = std::max<std::size_t>(1, count / probes_of_points);
  for (std::size_t i = 0; i < count; i += stride) {
    const auto first = points.begin() + static_cast<std::ptrdiff_t>(i * width);
    probes_.emplace_back(first, first + static_cast<std::ptrdiff_t>(width));
  }
}

double DominanceFilter::value_at(std::size_t place, const double* point) const {
  const double* row = coefficients(place);
  return std::inner_product(row, row + width_, point, 0.0);
}

DominanceFilter::Pivot DominanceFilter::pivot_of(std::size_t place) const {
  const double* row = coefficients(place);
  // No value of the pivot in the box is larger than this.
  double largest = 0.0;
  for (std::size_t j = 0; j < width_; ++j) {
    largest += std::fabs(row[j]) * (std::fabs(centre_[j]) + half_width_[j]);
  }
  return {{row, row + width_}, tolerance::prune_slack(largest)};
}

bool DominanceFilter::beaten_by(const double* row, const Pivot& pivot) const {
  double lead = 0.0;
  for (std::size_t j = 0; j < width_; ++j) {
    const double difference = row[j] - pivot.coefficients[j];
    lead += difference * centre_[j] + std::fabs(difference) * half_width_[j];
  }
  return lead < -pivot.slack;
}

bool DominanceFilter::beaten(const double* row) const {
  return std::any_of(pivots_.begin(), pivots_.end(),
                     [&](const Pivot& pivot) { return beaten_by(row, pivot); });
}

void DominanceFilter::offer(const double* row, std::size_t stretch, int final_yr) {
  if (beaten(row)) return;
  rows_.push_back({stretch, final_yr});
  coefficients_.insert(coefficients_.end(), row, row + width_);
  if (rows_.size() < drop_at_) return;
  choose_pivots();
  drop_beaten();
  drop_at_ = std::max(rows_before_first_drop, 2 * rows_.size());
}

void DominanceFilter::choose_pivots() {
  pivots_.clear();
  std::vector<std::size_t> chosen;
  for (const std::vector<double>& probe : probes_) {
    std::size_t best = 0;
    double highest = value_at(0, probe.data());
    for (std::size_t i = 1; i < rows_.size(); ++i) {
      const double value = value_at(i, probe.data());
      if (value > highest) highest = value, best = i;
    }
    if (std::find(chosen.begin(), chosen.end(), best) == chosen.end()) chosen.push_back(best);
  }
  for (const std::size_t place : chosen) pivots_.push_back(pivot_of(place));
}

void DominanceFilter::drop_beaten() {
  std::size_t kept = 0;
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const double* row = coefficients(i);
    if (beaten(row)) continue;
    rows_[kept] = rows_[i];
    std::copy(row, row + width_, coefficients_.data() + kept * width_);
    ++kept;
  }
  rows_.resize(kept);
  coefficients_.resize(kept * width_);
}

void DominanceFilter::finish() {
  if (rows_.empty()) return;
  choose_pivots();
  drop_beaten();
  std::vector<std::size_t> by_value(rows_.size());
  std::iota(by_value.begin(), by_value.end(), std::size_t{0});
  std::sort(by_value.begin(), by_value.end(), [&](std::size_t a, std::size_t b) {
    const double value_a = value_at(a, centre_.data()), value_b = value_at(b, centre_.data());
    return value_a != value_b ? value_a > value_b : a < b;
  });
  pivots_.clear();
  for (std::size_t i = 0; i < std::min(by_value.size(), most_final_pivots); ++i) {
    pivots_.push_back(pivot_of(by_value[i]));
  }
  drop_beaten();
  pivots_.clear();
}

}  // namespace staddle
