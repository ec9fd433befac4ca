// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/value_writer.h"

#include <cmath>
#include <cstdint>

namespace staddle::json {

Value number(double value) {
  require(std::isfinite(value), "a result holds finite numbers only");
  return value == 0.0 ? Value(0.0) : Value(value);  // never -0
}

Value count(double value) {
  constexpr double largest_exact = 9007199254740992.0;  // 2^53
  if (value < 0.0 || value >= largest_exact || value != std::floor(value)) return number(value);
  return static_cast<std::uint64_t>(value);
}

Value usd_ac(MoneyPerAcre money) { return number(money.in(dollars_per_acre)); }

Value whole_age(Age age) { return age.whole(); }

Value outside_ranges(const std::vector<OutsideRange>& outside) {
  return list(outside, [](const OutsideRange& entry) {
    return Value{{"what", entry.what},
                 {"value", number(entry.value)},
                 {"range", {number(entry.low), number(entry.high)}},
                 {"of", entry.of}};
  });
}

Value tons_by_product(const std::vector<ProductLimit>& products, const std::vector<Yield>& tons) {
  require(products.size() == tons.size(), "one yield belongs to each product");
  Value object = Value::object();
  for (std::size_t i = 0; i < products.size(); ++i) {
    object[products[i].name] = number(tons[i].in(tons_per_acre));
  }
  return object;
}

Value measures(const StandMeasures& stand) {
  return {{"tpa", number(stand.trees.in(trees_per_acre))},
          {"basal_area_ft2_ac", number(stand.basal_area.in(square_feet_per_acre))},
          {"qmd_in", number(stand.quadratic_mean_diameter.in(inches))},
          {"dominant_height_ft", number(stand.dominant_height.in(feet))},
          {"live_crown_ratio", optional(stand.live_crown_ratio, number)}};
}

Value assumptions(const std::vector<Assumption>& assumed) {
  return list(assumed, [](const Assumption& assumption) {
    Value value = Value::parse(assumption.value_json, nullptr, false);
    require(!value.is_discarded(), "an assumed value is JSON text");
    return Value{
        {"pointer", assumption.pointer}, {"value", std::move(value)}, {"why", assumption.why}};
  });
}

std::string result_text(const Value& result) {
  return result.dump(2, ' ', false, Value::error_handler_t::replace) + "\n";
}

std::string result_line(const Value& result) {
  return result.dump(-1, ' ', false, Value::error_handler_t::replace) + "\n";
}

}  // namespace staddle::json
