// SPDX-License-Identifier: GPL-3.0-or-later
#include "vary/price_percentiles.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "numeric/descriptive.h"
#include "staddle/base/contract.h"

namespace staddle {
namespace {

constexpr std::array<int, 5> percents = {10, 25, 50, 75, 90};

MoneyPerAcre value_of(const DatedPrices& date, const std::vector<Yield>& tons) {
  MoneyPerAcre value;
  for (std::size_t i = 0; i < tons.size(); ++i) value += tons[i] * date.stumpage[i];
  return value;
}

}  // namespace

std::vector<PriceScenario> percentiles_by_product(const std::vector<DatedPrices>& dates) {
  require(!dates.empty(), "percentiles are of at least one date");
  std::vector<PriceScenario> scenarios;
  for (const int percent : percents) {
    PriceScenario scenario{"p" + std::to_string(percent), {}};
    for (std::size_t i = 0; i < dates.front().stumpage.size(); ++i) {
      std::vector<double> prices;
      for (const DatedPrices& date : dates) {
        prices.push_back(date.stumpage[i].in(dollars_per_ton));
      }
      scenario.stumpage.push_back(
          dollars_per_ton(numeric::quantile(std::move(prices), percent / 100.0)));
    }
    scenarios.push_back(std::move(scenario));
  }
  return scenarios;
}

std::vector<PriceScenario> joint_percentiles(const std::vector<DatedPrices>& dates,
                                             const std::vector<Yield>& tons) {
  require(!dates.empty(), "percentiles are of at least one date");
  std::vector<DatedPrices> ranked = dates;
  std::sort(ranked.begin(), ranked.end(), [&](const DatedPrices& a, const DatedPrices& b) {
    const MoneyPerAcre value_a = value_of(a, tons), value_b = value_of(b, tons);
    return value_a != value_b ? value_a < value_b : a.date < b.date;
  });
  std::vector<PriceScenario> scenarios;
  for (const int percent : percents) {
    const double rank = static_cast<double>(ranked.size() - 1) * percent / 100.0;
    const auto below = static_cast<std::size_t>(std::floor(rank));
    const std::size_t above = std::min(below + 1, ranked.size() - 1);
    const double share = rank - std::floor(rank);
    PriceScenario scenario{"joint p" + std::to_string(percent), {}};
    for (std::size_t i = 0; i < tons.size(); ++i) {
      const Price low = ranked[below].stumpage[i], high = ranked[above].stumpage[i];
      scenario.stumpage.push_back(low + (high - low) * share);
    }
    scenarios.push_back(std::move(scenario));
  }
  return scenarios;
}

}  // namespace staddle
