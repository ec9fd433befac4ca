// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>
#include <sstream>
#include <string>
#include <vector>

#include "staddle/base/tolerance.h"
#include "staddle/finance/valuation.h"
#include "support/files.h"
#include "support/money.h"
#include "support/near.h"

namespace staddle {
namespace {

using support::as_printed;
using support::usd;
using support::within;

CashFlow pay(double year, double amount) { return {years(year), dollars_per_acre(amount), ""}; }

// Bettinger, Boston, Siry & Grebner, Forest Management and Planning, answers to ch. 2.
TEST_CASE("published land expectation value of one cost and one harvest") {
  const DiscountRate rate = DiscountRate::real(0.05);
  const MoneyPerAcre npv = net_present_value({pay(0, -125), pay(35, 12'500)}, rate);
  CHECK(usd(land_expectation_value(npv, years(35), rate)) == as_printed(2615.25, 2));
}

// Forisk, 14 June 2010: buy at 1,000; 5 tons a year at 20, costs of 10 a year, for
// five years; sell at 1,000 real; 6 percent real, inflation 2 percent.
TEST_CASE("published timberland is worth the same in real and in nominal money") {
  const double inflation = 0.02;
  CashFlows real = {pay(0, -1000), pay(5, 1000)};
  for (int year = 1; year <= 5; ++year) real.push_back(pay(year, 5 * 20 - 10));
  CashFlows nominal = real;
  for (CashFlow& flow : nominal) {
    flow.amount = flow.amount * std::pow(1 + inflation, flow.time.in(years));
  }
  const DiscountRate real_rate = DiscountRate::real(0.06);
  const DiscountRate nominal_rate = DiscountRate::from_real_and_inflation(real_rate, inflation);
  CHECK(usd(net_present_value(real, real_rate)) == as_printed(126.37, 2));
  CHECK(usd(net_present_value(nominal, nominal_rate)) == as_printed(126.37, 2));
}

// Georgia Forestry Commission, leaflets 2011 and 2012; one row is printed 0.01 off.
TEST_CASE("published annual equivalents follow from the published present values") {
  const DiscountRate rate = DiscountRate::real(0.05);
  std::istringstream lines(support::read_file(
      support::in_source_tree("tests/published/data/npv-annual-equivalent.csv")));
  int rows = 0;
  for (std::string line; std::getline(lines, line);) {
    if (line.empty() || line.front() == '#' || line.rfind("species,", 0) == 0) continue;
    std::vector<std::string> cells;
    std::istringstream row(line);
    for (std::string cell; std::getline(row, cell, ',');) cells.push_back(cell);
    REQUIRE(cells.size() == 6);
    CAPTURE(line);
    const MoneyPerAcre npv = dollars_per_acre(std::stod(cells[4]));
    const MoneyPerAcre perpetual = land_expectation_value(npv, years(std::stod(cells[2])), rate);
    CHECK(usd(equal_annual_equivalent(perpetual, rate)) == within(std::stod(cells[5]), 0.011));
    ++rows;
  }
  CHECK(rows == 8);
}

// A forest economics course, homework of 2009: price 10 per MBF, 10 percent.
TEST_CASE("published rotation year by year ties exactly in years three and four") {
  const DiscountRate rate = DiscountRate::real(0.10);
  const std::vector<double> volumes = {5, 8, 10, 11, 11.5, 11.6, 11.4, 11};
  const std::vector<double> printed = {45.45, 66.12, 75.13, 75.13, 71.41, 65.48, 58.50, 51.32};
  std::vector<double> values;
  for (std::size_t i = 0; i < volumes.size(); ++i) {
    const CashFlow sale = pay(static_cast<double>(i + 1), 10 * volumes[i]);
    values.push_back(usd(net_present_value({sale}, rate)));
    CHECK(values.back() == as_printed(printed[i], 2));
  }
  CHECK(tolerance::values_tie(values[2], values[3]));
  CHECK_FALSE(tolerance::values_tie(values[1], values[2]));
}

// Straka & Bullard, review problems, 2016: 1,000 at 10 percent for 10 years.
TEST_CASE("published future value of a single sum") {
  CHECK(1000 / DiscountRate::nominal(0.10).discount_factor(years(10)) == as_printed(2593.74, 2));
}

}  // namespace
}  // namespace staddle
