// SPDX-License-Identifier: GPL-3.0-or-later
#include "plant/break_even.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "numeric/roots.h"
#include "signs/plain_words.h"
#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

// Stands for the value where no regime is left: less than any regime is worth, and finite.
constexpr double no_regime_usd_ac = -1e9;

// One response of an alternative, made to run while all else stays.
class Response {
 public:
  Response(const EstablishmentAlternative& alternative, Height site_index)
      : alternative_(alternative),
        by_site_(alternative.response.years_gained == 0.0 &&
                 alternative.site_index_shift != feet(0)) {
    if (!by_site_) return;
    const double site = site_index.in(feet);
    low_ = std::max(-largest_site_index_shift_ft, least_site_index_ft - site);
    high_ = std::min(largest_site_index_shift_ft, most_site_index_ft - site);
    step_ = 1.0;
  }

  BreakEvenResponse told() const {
    BreakEvenResponse response;
    if (by_site_) {
      response.key = "site_index_shift_ft";
      response.unit = "ft";
    }
    response.today = today();
    return response;
  }
  double today() const {
    return by_site_ ? alternative_.site_index_shift.in(feet) : alternative_.response.years_gained;
  }
  // The end of the range on one side.
  double end(bool upwards) const { return upwards ? high_ : low_; }
  double step() const { return step_; }
  EstablishmentAlternative with(double value) const {
    EstablishmentAlternative other = alternative_;
    if (by_site_) {
      other.site_index_shift = feet(value);
    } else {
      other.response.years_gained = value;
    }
    return other;
  }

 private:
  const EstablishmentAlternative& alternative_;
  bool by_site_;
  double low_ = least_years_gained, high_ = most_years_gained, step_ = 0.5;
};

}  // namespace

BreakEvenResponse break_even_of(const EstablishmentAlternative& alternative, Height site_index,
                                double value, double target, const AlternativeValue& value_of) {
  const Response response(alternative, site_index);
  BreakEvenResponse found = response.told();
  if (tolerance::values_tie(value, target)) {
    found.value = found.today;
    return found;
  }
  const auto excess = [&](double at) {
    return std::max(value_of(response.with(at)) - target, no_regime_usd_ac);
  };
  const bool upwards = value < target;
  const double end = response.end(upwards);
  double near = found.today, far = near;
  do {
    near = far;
    if (near == end) {
      found.reason = fmt::format("still worth {} than the other at {} {}",
                                 upwards ? "less" : "more", words::number(end, 1), found.unit);
      return found;
    }
    far = upwards ? std::min(end, near + response.step()) : std::max(end, near - response.step());
  } while ((excess(far) >= 0.0) != upwards);
  const numeric::Bracket turn =
      numeric::find_root(excess, {std::min(near, far), std::max(near, far)}).bracket;
  found.value = excess(turn.high) >= 0.0 ? turn.high : turn.low;
  return found;
}

}  // namespace staddle
