// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "staddle/finance/tax.h"
#include "support/near.h"

namespace staddle {
namespace {

using support::within;

// 26 USC 194, worked example: 18,000 spent, 10,000 deducted, 8,000 over 84 months.
TEST_CASE("published amortisation of planting costs falls on eight years") {
  const std::vector<Money> by_year = reforestation_deductions(dollars(18'000));
  const double printed[] = {571, 1143, 1143, 1143, 1143, 1143, 1143, 571};
  REQUIRE(by_year.size() == 8);
  for (std::size_t year = 0; year < by_year.size(); ++year) {
    CAPTURE(year);
    const double at_once = year == 0 ? 10'000 : 0;
    CHECK(by_year[year].in(dollars)-at_once == within(printed[year], 0.5));
  }
}

}  // namespace
}  // namespace staddle
