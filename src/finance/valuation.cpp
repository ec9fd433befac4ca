// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/finance/valuation.h"

#include <cmath>

#include "staddle/base/contract.h"

namespace staddle {
namespace {

double present_value(const CashFlow& flow, DiscountRate rate) {
  const double amount = flow.amount.in(dollars_per_acre);
  require(std::isfinite(amount), "a payment is finite");
  return amount * rate.discount_factor(flow.time);
}

}  // namespace

MoneyPerAcre net_present_value(const CashFlows& flows, DiscountRate rate) {
  double sum = 0.0;
  for (const CashFlow& flow : flows) sum += present_value(flow, rate);
  return dollars_per_acre(sum);
}

MoneyPerAcre land_expectation_value(MoneyPerAcre npv_of_one_rotation, Years planting_to_planting,
                                    DiscountRate rate) {
  require(std::isfinite(npv_of_one_rotation.in(dollars_per_acre)), "a present value is finite");
  return npv_of_one_rotation * rate.perpetuity_factor(planting_to_planting);
}

MoneyPerAcre equal_annual_equivalent(MoneyPerAcre perpetual_value, DiscountRate rate) {
  require(std::isfinite(perpetual_value.in(dollars_per_acre)), "a present value is finite");
  return perpetual_value * rate.per_year();
}

std::optional<double> benefit_cost_ratio(const CashFlows& flows, DiscountRate rate) {
  double incomes = 0.0;
  double costs = 0.0;
  for (const CashFlow& flow : flows) {
    const double value = present_value(flow, rate);
    (value > 0.0 ? incomes : costs) += std::fabs(value);
  }
  if (costs == 0.0) return std::nullopt;
  return incomes / costs;
}

}  // namespace staddle
