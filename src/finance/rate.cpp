// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/finance/rate.h"

#include <cmath>

#include "staddle/base/contract.h"

namespace staddle {
namespace {

void require_rate(double fraction_per_year) {
  require(std::isfinite(fraction_per_year) && fraction_per_year > -1.0,
          "a rate is finite and above -100 percent a year");
}

}  // namespace

DiscountRate DiscountRate::real(double fraction_per_year) {
  require_rate(fraction_per_year);
  return DiscountRate(fraction_per_year, Kind::real);
}

DiscountRate DiscountRate::nominal(double fraction_per_year) {
  require_rate(fraction_per_year);
  return DiscountRate(fraction_per_year, Kind::nominal);
}

DiscountRate DiscountRate::from_real_and_inflation(DiscountRate real,
                                                   double inflation_fraction_per_year) {
  require(real.kind() == Kind::real, "inflation is added to a real rate");
  require_rate(inflation_fraction_per_year);
  return nominal((1.0 + real.per_year()) * (1.0 + inflation_fraction_per_year) - 1.0);
}

double DiscountRate::discount_factor(Years time) const {
  require(std::isfinite(time.in(years)), "a time of discounting is finite");
  const double factor = std::pow(1.0 + fraction_per_year_, -time.in(years));
  require(std::isfinite(factor), "a discount factor is finite");
  return factor;
}

double DiscountRate::perpetuity_factor(Years period) const {
  require(fraction_per_year_ > 0.0, "a perpetuity needs a rate above 0");
  require(period.in(years) > 0.0 && std::isfinite(period.in(years)),
          "a perpetuity needs a period above 0 years");
  return -1.0 / std::expm1(-period.in(years)*std::log1p(fraction_per_year_));
}

}  // namespace staddle
