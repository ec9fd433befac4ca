// SPDX-License-Identifier: GPL-3.0-or-later
#include "vary/turning_point.h"

#include <algorithm>
#include <cmath>

namespace staddle {
namespace {

// Looked at together, so that several threads have work.
constexpr std::size_t steps_at_a_time = 8;

}  // namespace

double steps_per_unit(const Parameter& parameter) {
  constexpr double hundredth_of_a_percent = 10000.0;
  switch (parameter.kind) {
    case Parameter::Kind::site_index:
    case Parameter::Kind::storm_odds_ratio:
      return 100.0;
    case Parameter::Kind::planted:
      return 1.0;
    default:
      return hundredth_of_a_percent;
  }
}

ParameterLine::ParameterLine(Answers& answers, Setter set, double start, double low, double high,
                             double steps_per_unit)
    : answers_(answers),
      set_(std::move(set)),
      start_(start),
      low_(low),
      high_(high),
      steps_per_unit_(steps_per_unit) {
  Circumstances here = todays(answers.problem());
  set_(start_, here);
  at_start_ = answers_.of(here);
}

std::vector<long> ParameterLine::steps(Way way) const {
  const long lowest = std::lround(low_ * steps_per_unit_);
  const long highest = std::lround(high_ * steps_per_unit_);
  const long sign = way == Way::up ? 1 : -1;
  const auto beyond_start = [&](long step) {
    return way == Way::up ? value_of(step) > start_ : value_of(step) < start_;
  };
  long first = std::lround(start_ * steps_per_unit_);
  while (beyond_start(first)) first -= sign;
  while (!beyond_start(first)) first += sign;
  const long last = way == Way::up ? highest : lowest;
  std::vector<long> found;
  constexpr double farther = 1.25;
  for (double offset = 0.0;; offset = std::max(offset + 1.0, std::floor(offset * farther))) {
    const long step = first + sign * static_cast<long>(offset);
    if (sign * step > sign * last) break;
    found.push_back(step);
  }
  if (!found.empty() && found.back() != last) found.push_back(last);
  return found;
}

void ParameterLine::answer(const std::vector<long>& steps) {
  std::vector<long> unknown;
  std::vector<Circumstances> asked;
  for (const long step : steps) {
    if (known_.contains(step)) continue;
    unknown.push_back(step);
    asked.push_back(todays(answers_.problem()));
    set_(value_of(step), asked.back());
  }
  std::vector<VaryAnswer> found = answers_.of(asked);
  for (std::size_t i = 0; i < unknown.size(); ++i) known_.emplace(unknown[i], std::move(found[i]));
}

const VaryAnswer& ParameterLine::at(long step) {
  answer({step});
  return known_.at(step);
}

ParameterLine::Turn ParameterLine::narrowed(std::optional<long> inside, long outside,
                                            const Class& class_of, int today) {
  while (inside && std::labs(outside - *inside) > 1) {
    const long middle = *inside + (outside - *inside) / 2;
    if (class_of(at(middle)) == today) {
      inside = middle;
    } else {
      outside = middle;
    }
  }
  return {inside ? value_of(*inside) : start_, value_of(outside), inside ? at(*inside) : at_start_,
          at(outside)};
}

std::optional<ParameterLine::Turn> ParameterLine::nearest(Way way, const Class& class_of) {
  const std::vector<long> all = steps(way);
  const int today = class_of(at_start_);
  std::optional<long> inside;
  for (std::size_t from = 0; from < all.size(); from += steps_at_a_time) {
    const auto first = all.begin() + static_cast<std::ptrdiff_t>(from);
    const auto count = std::min(steps_at_a_time, all.size() - from);
    answer({first, first + static_cast<std::ptrdiff_t>(count)});
    for (std::size_t i = from; i < from + count; ++i) {
      if (class_of(at(all[i])) != today) return narrowed(inside, all[i], class_of, today);
      inside = all[i];
    }
  }
  return std::nullopt;
}

std::optional<ParameterLine::Turn> ParameterLine::nearest(const Class& class_of) {
  std::optional<Turn> down = nearest(Way::down, class_of);
  std::optional<Turn> up = nearest(Way::up, class_of);
  if (!down || !up) return down ? down : up;
  return start_ - down->outside <= up->outside - start_ ? down : up;
}

}  // namespace staddle
