// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/vary/parameter.h"

#include "staddle/base/contract.h"

namespace staddle {

std::vector<Parameter> parameters_of(const std::vector<std::string>& products) {
  using Kind = Parameter::Kind;
  std::vector<Parameter> parameters;
  for (std::size_t i = 0; i < products.size(); ++i) {
    parameters.push_back({Kind::product_price, i, products[i]});
  }
  parameters.push_back({Kind::establishment, 0, "establishment_usd_ac"});
  parameters.push_back({Kind::annual_cost, 0, "annual_cost_usd_ac"});
  parameters.push_back({Kind::real_discount_rate, 0, "real_discount_rate"});
  parameters.push_back({Kind::site_index, 0, "site_index_ft"});
  parameters.push_back({Kind::planted, 0, "planted_tpa"});
  parameters.push_back({Kind::thinning_price_factor, 0, "thinning_price_factor"});
  parameters.push_back({Kind::storm_odds_ratio, 0, "storm_odds_ratio"});
  parameters.push_back({Kind::growth_multiplier, 0, "growth_multiplier"});
  return parameters;
}

ParameterRange range_of(const Parameter& parameter) {
  switch (parameter.kind) {
    case Parameter::Kind::product_price:
    case Parameter::Kind::establishment:
    case Parameter::Kind::annual_cost:
      return {-1, 100};
    case Parameter::Kind::real_discount_rate:
      return {0, 0.5, true};
    case Parameter::Kind::site_index:
      return {30, 120};
    case Parameter::Kind::planted:
      return {100, 4000};
    case Parameter::Kind::thinning_price_factor:
      return {0, 10};
    case Parameter::Kind::storm_odds_ratio:
      return {0, 100, true};
    case Parameter::Kind::growth_multiplier:
      return {0, 10, true};
  }
  throw ContractViolation("range_of knows every kind of parameter");
}

}  // namespace staddle
