// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "staddle/finance/cash_flow.h"
#include "staddle/finance/rate.h"
#include "staddle/units/units.h"

// Federal income tax on timber, as far as it enters a comparison of plans. Not tax advice:
// the rates are the owner's to give, and an owner's own case may differ.
namespace staddle {

// Rates, and what was paid for the timber.
struct TaxRules {
  double long_term_rate = 0.15;         // on timber sold: proceeds less basis
  double ordinary_rate = 0.22;          // on other income; saved on costs deducted
  double inflation = 0.02;              // basis and deductions are nominal: it shrinks them
  bool reforestation_deduction = true;  // 26 USC 194; else planting adds to the basis
  MoneyPerAcre basis;                   // of the timber standing now
  // Tons over which the basis is used up as they are cut; zero: those standing now.
  Yield basis_tons;
};

// 26 USC 194(b): what may be deducted at once, a year and property.
inline constexpr double reforestation_deduction_limit_usd = 10'000;

// How the cost of planting is deducted: so much in the year of planting, the rest over 84
// months that begin with the second half of that year, so that it falls on eight years,
// the first and the last with six months each. [0] is the year of planting.
// Worked example (26 USC 194): 18,000 gives 10,000 at once, then 571, six times 1,143, 571
// of the 8,000 left: {10,571; 1,143 x 6; 571}.
// REQUIRES: a cost that is not negative.
std::vector<Money> reforestation_deductions(Money cost);

// What a nominal dollar of `time` from now is worth now: it loses to inflation, then it is
// discounted like any other. REQUIRES: `rate` real.
double nominal_discount_factor(DiscountRate rate, double inflation, Years time);

// What the deductions for planting save, per acre, in today's money at planting. The limit
// is on the whole property, so the acres planted at once matter.
// REQUIRES: acres above zero; `rate` real.
MoneyPerAcre worth_of_reforestation_deductions(MoneyPerAcre cost, Area acres, const TaxRules& rules,
                                               DiscountRate rate);

}  // namespace staddle
