// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "staddle/finance/rate.h"
#include "staddle/units/units.h"
#include "staddle/vary/parameter.h"

namespace staddle {

// A set of stumpage prices under a name.
struct PriceScenario {
  std::string name;
  std::vector<Price> stumpage;  // one per product, in the order of the price list
  double weight = 1.0;          // in averages over scenarios; > 0 or = 0
};

// What all products sold for on one date.
struct DatedPrices {
  std::string date;             // ISO, "2024-06-30"
  std::vector<Price> stumpage;  // one per product
};

struct ParameterSpan {
  Parameter parameter;
  double low = 0, high = 0;     // low <= high, both within range_of(parameter)
};

struct ParameterValues {
  Parameter parameter;
  std::vector<double> values;   // at least one, each within range_of(parameter)
};

struct GridQuestion {
  ParameterValues x, y;         // of two different parameters
};

// What is to be varied, beside the scenario's own values.
struct VaryQuestion {
  std::vector<DiscountRate> rates;             // at least one, each above 0
  std::vector<PriceScenario> price_scenarios;  // besides "base", the scenario's own
  // Adds the scenarios p10, p25, p50, p75, p90 (every product at its own percentile) and
  // joint p10 .. joint p90 (the dates ranked by what the tons of the base optimum would
  // have sold for). Percentiles of Hyndman & Fan type 7; between two dates the prices are
  // those in between.
  std::vector<DatedPrices> dated_prices;
  std::vector<ParameterSpan> one_at_a_time;
  std::optional<GridQuestion> grid;
};

}  // namespace staddle
