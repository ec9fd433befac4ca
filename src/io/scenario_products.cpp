// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "io/number_text.h"
#include "io/scenario_blocks.h"
#include "products/assortment_kernel.h"

namespace staddle {
namespace {

constexpr Option products_rows[] = {
    {.pointer = "/products",
     .meaning = "products by tree class, largest first",
     .allowed = kinds::list,
     .least_items = 1,
     .most_items = max_products,
     .default_json = R"([{"name":"sawtimber","min_dbh_in":11.5,"top_in":8,"grade_fraction":1},)"
                     R"({"name":"chip_n_saw","min_dbh_in":8.5,"top_in":6},)"
                     R"({"name":"pulpwood","min_dbh_in":4.5,"top_in":3}])"},
    {.pointer = "/products/#", .meaning = "a product", .allowed = kinds::object},
    {.pointer = "/products/#/name",
     .meaning = "its name",
     .allowed = kinds::text,
     .required = true},
    {.pointer = "/products/#/min_dbh_in",
     .meaning = "thinnest stem",
     .unit = "in",
     .allowed = kinds::number,
     .range = from_to(1, 60),
     .required = true},
    {.pointer = "/products/#/top_in",
     .meaning = "diameter to which it is cut",
     .unit = "in",
     .allowed = kinds::number,
     .range = above_to(0, 60),
     .required = true},
    {.pointer = "/products/#/grade_fraction",
     .meaning = "share of the class that makes the grade, the rest falls one product down",
     .allowed = kinds::number,
     .range = from_to(0, 1)},
};

constexpr DefaultCondition products_conditions[] = {
    {"/products",
     [](const json::Node&, const json::Node& root) { return grows_by_equations(root); }},
};

void check_name(ScenarioReading& reading, const Place& place,
                const std::vector<std::string>& earlier) {
  const auto name = place.text();
  if (!name) return;
  if (std::find(earlier.begin(), earlier.end(), *name) != earlier.end()) {
    reading.fault(place, FaultCode::repeated_key,
                  quoted_text(*name) + " is the name of an earlier product too");
  }
}

void check_order(ScenarioReading& reading, const Place& product, const Place& larger) {
  const auto dbh = product["min_dbh_in"].number();
  const auto larger_dbh = larger["min_dbh_in"].number();
  if (dbh && larger_dbh && *dbh >= *larger_dbh) {
    reading.fault(product["min_dbh_in"], FaultCode::contradiction,
                  "found " + number_text(*dbh) + " after " + number_text(*larger_dbh) +
                      "; products stand largest first, min_dbh_in strictly falling");
  }
  const auto top = product["top_in"].number();
  const auto larger_top = larger["top_in"].number();
  if (top && larger_top && *top > *larger_top) {
    reading.fault(product["top_in"], FaultCode::contradiction,
                  "found " + number_text(*top) + " after " + number_text(*larger_top) +
                      "; top_in does not rise from product to product");
  }
}

void assume_grade(ScenarioReading& reading, const Place& product) {
  if (!product.usable() || product["grade_fraction"].there()) return;
  reading.assumed.push_back({product["grade_fraction"].pointer(), "1", "default"});
}

void read_products(ScenarioReading& reading, Scenario& scenario) {
  const Place list = reading.root["products"];
  if (reading.from_tables) {
    if (list.given()) {
      reading.fault(list, FaultCode::contradiction,
                    "the columns of a yield table are its products; this key belongs to a model");
    }
    if (reading.products) {
      for (const std::string& name : *reading.products) scenario.products.push_back({name, {}, {}});
    }
    return;
  }
  if (!list.is(kinds::list)) return;
  const std::vector<Place> items = list.items();
  std::vector<std::string> names;
  bool all_known = true;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const Place& item = items[i];
    check_name(reading, item["name"], names);
    if (i > 0) check_order(reading, item, items[i - 1]);
    const bool smallest = i + 1 == items.size();
    const auto grade = item["grade_fraction"].number();
    if (smallest && grade && *grade != 1) {
      reading.fault(item["grade_fraction"], FaultCode::contradiction,
                    "the smallest product has nothing below it to fall to");
    }
    if (!smallest && list.given()) assume_grade(reading, item);
    all_known = all_known && item["name"].text().has_value();
    names.push_back(item["name"].text_or_empty());
    scenario.products.push_back({names.back(), inches(item["min_dbh_in"].number_or_zero()),
                                 inches(item["top_in"].number_or_zero()), grade.value_or(1.0)});
  }
  if (all_known) reading.products = names;
}

}  // namespace

ScenarioBlock products_block() { return {products_rows, products_conditions, read_products}; }

}  // namespace staddle
