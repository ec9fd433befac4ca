// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <compare>

#include "staddle/units/units.h"

namespace staddle {

// A rate of interest by the year, compounded once a year, and whether it is real
// (beyond inflation: for money of today's worth) or nominal (for money as it will be
// paid). Only a rate makes discount factors. The default is a real rate of 0.
class DiscountRate {
 public:
  enum class Kind { real, nominal };

  constexpr DiscountRate() = default;

  // DiscountRate::real(0.05) is five percent a year.
  // REQUIRES, both: finite, above -1 (at -1 a dollar is lost whole within the year).
  static DiscountRate real(double fraction_per_year);
  static DiscountRate nominal(double fraction_per_year);

  // (1 + r)(1 + i) - 1, nominal: discounting money that grows with the inflation i at
  // this rate is discounting it at its worth of today at r.
  // REQUIRES: `real` is real; inflation finite, above -1.
  static DiscountRate from_real_and_inflation(DiscountRate real,
                                              double inflation_fraction_per_year);

  constexpr double per_year() const { return fraction_per_year_; }
  constexpr Kind kind() const { return kind_; }

  // (1 + r)^-t: what a dollar after `time` is worth now. Above 1 before now.
  // REQUIRES: time finite, and the factor is a finite double.
  double discount_factor(Years time) const;

  // 1 / (1 - v^period): what a dollar now and at the end of every period, for ever, is
  // worth now. Accurate however small the rate.
  // REQUIRES: per_year() > 0, period > 0 and finite.
  double perpetuity_factor(Years period) const;

  friend constexpr bool operator==(const DiscountRate&, const DiscountRate&) = default;

 private:
  constexpr DiscountRate(double fraction_per_year, Kind kind)
      : fraction_per_year_(fraction_per_year), kind_(kind) {}

  double fraction_per_year_ = 0.0;
  Kind kind_ = Kind::real;
};

}  // namespace staddle
