// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "staddle/advise/fitted_ranges.h"
#include "staddle/scenario/scenario.h"
#include "staddle/stand/stand_measures.h"

// The pieces from which the JSON results are put together: keys keep their order, numbers
// their full precision, and no number is NaN or infinite (ContractViolation).
namespace staddle::json {

using Value = nlohmann::ordered_json;

Value number(double value);
// A count as a whole number while a double holds it exactly.
Value count(double value);
Value usd_ac(MoneyPerAcre money);
Value whole_age(Age age);

template <class Item, class Writer>
Value optional(const std::optional<Item>& item, Writer write) {
  return item ? Value(write(*item)) : Value(nullptr);
}

template <class Items, class Writer>
Value list(const Items& items, Writer write) {
  Value values = Value::array();
  for (const auto& item : items) values.push_back(write(item));
  return values;
}

// An object with one key per product, in the order of the price list.
Value outside_ranges(const std::vector<OutsideRange>& outside);
Value tons_by_product(const std::vector<ProductLimit>& products, const std::vector<Yield>& tons);
// tpa, basal_area_ft2_ac, qmd_in, dominant_height_ft, live_crown_ratio.
Value measures(const StandMeasures& stand);
// [{pointer, value, why}]
Value assumptions(const std::vector<Assumption>& assumed);

// The whole result, indented, with an end of line.
std::string result_text(const Value& result);
// The same on one line.
std::string result_line(const Value& result);

}  // namespace staddle::json
