// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/finance/tax.h"

#include <algorithm>
#include <cmath>

#include "staddle/base/contract.h"

namespace staddle {
namespace {

constexpr int amortisation_months = 84;
constexpr int months_of_first_year = 6;
constexpr int months_of_a_year = 12;

}  // namespace

std::vector<Money> reforestation_deductions(Money cost) {
  require(cost >= dollars(0), "the cost of planting is not negative");
  const Money at_once = std::min(cost, dollars(reforestation_deduction_limit_usd));
  const Money per_month = (cost - at_once) / amortisation_months;
  std::vector<Money> by_year{at_once + months_of_first_year * per_month};
  int left = amortisation_months - months_of_first_year;
  while (left > 0) {
    const int months = std::min(left, months_of_a_year);
    by_year.push_back(months * per_month);
    left -= months;
  }
  return by_year;
}

double nominal_discount_factor(DiscountRate rate, double inflation, Years time) {
  return DiscountRate::from_real_and_inflation(rate, inflation).discount_factor(time);
}

MoneyPerAcre worth_of_reforestation_deductions(MoneyPerAcre cost, Area planted,
                                               const TaxRules& rules, DiscountRate rate) {
  require(planted > acres(0), "planting takes an area above zero");
  const std::vector<Money> deductions = reforestation_deductions(cost * planted);
  double worth = 0.0;
  for (std::size_t year = 0; year < deductions.size(); ++year) {
    worth += deductions[year].in(dollars)*nominal_discount_factor(rate, rules.inflation,
                                                                  years(static_cast<double>(year)));
  }
  return dollars_per_acre(rules.ordinary_rate * worth / planted.in(acres));
}

}  // namespace staddle
