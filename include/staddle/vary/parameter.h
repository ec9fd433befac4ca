// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace staddle {

// One figure of a scenario that may be set differently. Values of a parameter are plain
// numbers because the parameter says what they are: for the first three kinds a relative
// change (-0.3: thirty percent less), for the others the value itself.
struct Parameter {
  enum class Kind {
    product_price,          // relative; stumpage of one product
    establishment,          // relative
    annual_cost,            // relative
    real_discount_rate,     // per year, (0, 0.5]
    site_index,             // ft, 30 to 120; equations only
    planted,                // trees per acre, 100 to 4000; equations only
    thinning_price_factor,  // of every product, 0 to 10
    storm_odds_ratio,       // of every peril, (0, 100]
    growth_multiplier,      // (0, 10]; as regime/stand_case.h has it
  };
  Kind kind = Kind::real_discount_rate;
  std::size_t product = 0;  // with product_price: its place in the price list
  std::string name;         // as files write it

  bool is_relative() const {
    return kind == Kind::product_price || kind == Kind::establishment ||
           kind == Kind::annual_cost;
  }
  friend bool operator==(const Parameter&, const Parameter&) = default;
};

// Every parameter, the products first, by their names.
std::vector<Parameter> parameters_of(const std::vector<std::string>& products);

// The least and the most that a parameter may be set to.
struct ParameterRange {
  double low = 0, high = 0;
  bool low_open = false;
  bool contains(double value) const {
    return (low_open ? value > low : value >= low) && value <= high;
  }
};
ParameterRange range_of(const Parameter& parameter);

}  // namespace staddle
