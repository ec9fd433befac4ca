// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "staddle/finance/cash_flow.h"
#include "staddle/finance/rate.h"
#include "staddle/units/units.h"

// What a list of payments is worth. The rate and the payments must be of one kind, both
// real or both nominal: only the caller can know that of the payments.
//
// REQUIRES, everywhere: times and amounts finite. An empty list is worth 0.
namespace staddle {

// Sum of amount x v^time.
MoneyPerAcre net_present_value(const CashFlows& flows, DiscountRate rate);

// The worth of bare land that bears one rotation after another for ever (Faustmann
// 1849): npv / (1 - v^period). The npv is that of one rotation, its costs during the
// years of delay included; the period is from one planting to the next.
// Worked example (Bettinger, Boston, Siry & Grebner, Forest Management and Planning,
// answers to ch. 2): -125 at 0, 12,500 at 35, 5 percent, no delay: 2,615.25.
// REQUIRES: rate > 0, period > 0.
MoneyPerAcre land_expectation_value(MoneyPerAcre npv_of_one_rotation, Years planting_to_planting,
                                    DiscountRate rate);

// The payment at the end of every year, for ever, that is worth as much: rate x value.
// Of a land expectation value it is also the even payment over each rotation.
MoneyPerAcre equal_annual_equivalent(MoneyPerAcre perpetual_value, DiscountRate rate);

// Present value of the incomes over that of the costs; nullopt where nothing is paid.
// An amount counts as it stands: a payment net of its own cost is one income.
std::optional<double> benefit_cost_ratio(const CashFlows& flows, DiscountRate rate);

// The rates at which a list of payments is worth nothing.
struct InternalRates {
  // Every rate above -99 and below 1000 percent a year, rising. A rate where the worth
  // touches 0 without crossing it counts once.
  std::vector<DiscountRate> all;
  // The smallest that is not negative; where all are negative, the largest.
  std::optional<DiscountRate> reported;
  std::string reason;  // why there is none; empty where there is one
};

// With u = 1 + r and n the last year, NPV x u^n is a polynomial in u, whose positive
// roots numeric::positive_roots finds without missing any; each is exact to
// tolerance::root. A rate within that of 0 is 0. The payments of one year count together,
// and as nothing where only rounding keeps their sum from 0: a ghost of 1e-17 dollars now
// would make a rate of hundreds of percent out of one dollar in thirty years.
// REQUIRES: every time a whole number of years, from 0 to 10,000.
InternalRates internal_rates_of_return(const CashFlows& flows,
                                       DiscountRate::Kind kind = DiscountRate::Kind::real);

}  // namespace staddle
