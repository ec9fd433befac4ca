// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/units/quantity.h"

// The dozen quantities of the trade. Heights, stem diameters and distances are kept
// apart on purpose: all are lengths, yet to put one where another belongs is always a
// mistake.
namespace staddle {

using Height = Quantity<struct HeightDimension>;
using Diameter = Quantity<struct DiameterDimension>;        // at breast height, or of a top
using Distance = Quantity<struct DistanceDimension>;        // over the ground
using BasalArea = Quantity<struct BasalAreaDimension>;      // per acre
using TreeDensity = Quantity<struct TreeDensityDimension>;  // per acre
using Yield = Quantity<struct YieldDimension>;              // green weight per acre
using MoneyPerAcre = Quantity<struct MoneyPerAcreDimension>;
using Price = Quantity<struct PriceDimension>;  // stumpage, per green ton
using Area = Quantity<struct AreaDimension>;
using Weight = Quantity<struct WeightDimension>;  // green tons of a whole tract
using Money = Quantity<struct MoneyDimension>;    // of a whole tract
using Years = Quantity<struct YearsDimension>;    // a duration, never a date

inline constexpr Unit<HeightDimension> feet;
inline constexpr Unit<DiameterDimension> inches;
inline constexpr Unit<DistanceDimension> feet_across;
inline constexpr Unit<BasalAreaDimension> square_feet_per_acre;
inline constexpr Unit<TreeDensityDimension> trees_per_acre;
inline constexpr Unit<YieldDimension> tons_per_acre;
inline constexpr Unit<MoneyPerAcreDimension> dollars_per_acre;
inline constexpr Unit<PriceDimension> dollars_per_ton;
inline constexpr Unit<AreaDimension> acres;
inline constexpr Unit<WeightDimension> tons;
inline constexpr Unit<MoneyDimension> dollars;
inline constexpr Unit<YearsDimension> years;

// The products that make sense.
constexpr MoneyPerAcre operator*(Yield yield, Price price) {
  return dollars_per_acre(yield.in(tons_per_acre)*price.in(dollars_per_ton));
}
constexpr Weight operator*(Yield yield, Area area) {
  return tons(yield.in(tons_per_acre)*area.in(acres));
}
constexpr Money operator*(MoneyPerAcre money, Area area) {
  return dollars(money.in(dollars_per_acre)*area.in(acres));
}

}  // namespace staddle
