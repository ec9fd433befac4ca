// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

#include "numeric/polynomial_roots.h"
#include "staddle/base/contract.h"
#include "staddle/base/tolerance.h"
#include "staddle/finance/valuation.h"

namespace staddle {
namespace {

constexpr double lowest_rate = -0.99;
constexpr double highest_rate = 10.0;
constexpr double last_year_allowed = 10'000.0;

// [t]: the money of year t.
std::vector<double> by_year(const CashFlows& flows) {
  struct Year {
    double net = 0.0;
    double moved = 0.0;
    double payments = 0.0;
  };
  std::vector<Year> years_of_flow;
  for (const CashFlow& flow : flows) {
    const double time = flow.time.in(years);
    const double amount = flow.amount.in(dollars_per_acre);
    require(time >= 0.0 && time <= last_year_allowed && time == std::floor(time),
            "an internal rate needs payments at whole years from 0 to 10,000");
    require(std::isfinite(amount), "a payment is finite");
    const auto t = static_cast<std::size_t>(time);
    if (t >= years_of_flow.size()) years_of_flow.resize(t + 1);
    years_of_flow[t].net += amount;
    years_of_flow[t].moved += std::fabs(amount);
    years_of_flow[t].payments += 1.0;
  }
  std::vector<double> net;
  net.reserve(years_of_flow.size());
  for (const Year& year : years_of_flow) {
    const double rounding =
        4.0 * year.payments * std::numeric_limits<double>::epsilon() * year.moved;
    net.push_back(std::fabs(year.net) <= rounding ? 0.0 : year.net);
  }
  while (!net.empty() && net.back() == 0.0) net.pop_back();
  return net;
}

std::string reason_for_none(const std::vector<double>& money) {
  const auto [lowest, highest] = std::minmax_element(money.begin(), money.end());
  if (money.empty()) return "no money moves";
  if (*lowest >= 0.0) return "nothing is ever paid out";
  if (*highest <= 0.0) return "nothing is ever earned";
  return "the present value is never 0 at any rate between -99 and 1000 percent";
}

}  // namespace

InternalRates internal_rates_of_return(const CashFlows& flows, DiscountRate::Kind kind) {
  std::vector<double> coefficients = by_year(flows);
  InternalRates rates;
  rates.reason = reason_for_none(coefficients);
  // Of u^(n - t) is the money of year t.
  std::reverse(coefficients.begin(), coefficients.end());
  const auto roots = numeric::positive_roots(coefficients, {1.0 + lowest_rate, 1.0 + highest_rate});
  for (const double root : roots) {
    const double rate = std::fabs(root - 1.0) <= tolerance::root ? 0.0 : root - 1.0;
    rates.all.push_back(kind == DiscountRate::Kind::real ? DiscountRate::real(rate)
                                                         : DiscountRate::nominal(rate));
  }
  if (rates.all.empty()) return rates;
  rates.reason.clear();
  const auto first_not_negative = std::find_if(
      rates.all.begin(), rates.all.end(), [](DiscountRate rate) { return rate.per_year() >= 0.0; });
  rates.reported = first_not_negative == rates.all.end() ? rates.all.back() : *first_not_negative;
  return rates;
}

}  // namespace staddle
