// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <string>
#include <utility>
#include <vector>

#include "staddle/finance/valuation.h"
#include "support/near.h"

// Present values and internal rates printed in references of spreadsheet functions and
// of a numerical library (its examples partly from Gitman, Principles of Managerial
// Finance); agreement to half of the last digit printed.
namespace staddle {
namespace {

using support::as_printed;

CashFlows from_year(int first, const std::vector<double>& amounts) {
  CashFlows flows;
  for (std::size_t i = 0; i < amounts.size(); ++i) {
    flows.push_back({years(first + static_cast<double>(i)), dollars_per_acre(amounts[i]), ""});
  }
  return flows;
}

struct RateCase {
  std::string source;
  std::vector<double> amounts;
  double printed;
  int decimals;
  std::size_t rates;  // how many there are: counted here, not printed
};

const std::vector<RateCase> rate_cases = {
    {"Excel help, IRR", {-70000, 12000, 15000, 18000, 21000, 26000}, 0.086630948, 9, 1},
    {"Excel help, IRR", {-70000, 12000, 15000, 18000, 21000}, -0.021244848, 9, 1},
    {"numpy-financial doc, irr (Gitman)", {-100, 39, 59, 55, 20}, 0.28095, 5, 1},
    {"numpy-financial doc, irr", {-100, 0, 0, 74}, -0.0955, 4, 1},
    {"numpy-financial doc, irr", {-100, 100, 0, -7}, -0.0833, 4, 2},
    {"numpy-financial doc, irr", {-100, 100, 0, 7}, 0.06206, 5, 1},
    {"numpy-financial doc, irr", {-5, 10.5, 1, -8, 1}, 0.0886, 4, 3},
};

TEST_CASE("published internal rates are those reported among all found") {
  for (const RateCase& example : rate_cases) {
    CAPTURE(example.source, example.amounts);
    const InternalRates found = internal_rates_of_return(from_year(0, example.amounts));
    CHECK(found.all.size() == example.rates);
    REQUIRE(found.reported.has_value());
    CHECK(found.reported->per_year() == as_printed(example.printed, example.decimals));
  }
}

TEST_CASE("published rate of a loan is the internal rate of its payments") {
  // Excel help, RATE: 8,000 paid back by 48 payments of 200.
  std::vector<double> amounts(49, -200.0);
  amounts[0] = 8000.0;
  const InternalRates found = internal_rates_of_return(from_year(0, amounts));
  REQUIRE(found.all.size() == 1);
  CHECK(found.reported->per_year() == as_printed(0.007701472, 9));
}

TEST_CASE("published present values follow from their payments") {
  const auto worth = [](const CashFlows& flows, double rate) {
    return net_present_value(flows, DiscountRate::nominal(rate)).in(dollars_per_acre);
  };
  // Excel help, NPV: the first payment falls one period out.
  CHECK(worth(from_year(1, {-10000, 3000, 4200, 6800}), 0.10) == as_printed(1188.4434123, 7));
  // numpy-financial doc, npv: the first payment falls now.
  CHECK(worth(from_year(0, {-40000, 5000, 8000, 12000, 30000}), 0.08) == as_printed(3065.22267, 5));
  // Excel help, XNPV: days of the calendar, years of 365 of them.
  const std::vector<std::pair<int, double>> dated = {
      {39448, -10000}, {39508, 2750}, {39751, 4250}, {39859, 3250}, {39904, 2750}};
  CashFlows flows;
  for (const auto& [day, amount] : dated) {
    flows.push_back({years((day - 39448) / 365.0), dollars_per_acre(amount), ""});
  }
  CHECK(worth(flows, 0.09) == as_printed(2086.647602, 6));
}

}  // namespace
}  // namespace staddle
