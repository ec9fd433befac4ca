// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/base/contract.h"
#include "staddle/io/model_library.h"
#include "staddle/regime/stand_case.h"

namespace staddle::published {

inline const EquationSet& equations(const std::string& id) {
  for (const EquationSet& set : built_in_equation_sets()) {
    if (set.id == id) return set;
  }
  throw ContractViolation("no built-in equations of that id");
}

inline PriceList prices_7_18_25() {
  return {{dollars_per_ton(25), 1.0, {}, {}},
          {dollars_per_ton(18), 1.0, {}, {}},
          {dollars_per_ton(7), 1.0, {}, {}}};
}

// Bare land with the file format's defaults: prices 7/18/25, five percent,
// establishment 350, eight dollars a year.
inline StandCase bare_land(const EquationSet& set, double site_index_ft, double planted_tpa) {
  Costs costs;
  costs.rate = DiscountRate::real(0.05);
  costs.establishment = dollars_per_acre(350);
  costs.annual_cost = dollars_per_acre(8);
  return StandCase{
      GrowthModel::from_equations(set, feet(site_index_ft), trees_per_acre(planted_tpa)),
      Assortment::from_equations(set, default_products()),
      prices_7_18_25(),
      costs,
      Hazard{},
      std::nullopt};
}

// The rows of a small CSV file of numbers and words, its header left out.
std::vector<std::vector<std::string>> rows_of(const std::string& data_file);

}  // namespace staddle::published
