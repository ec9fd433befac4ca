// SPDX-License-Identifier: GPL-3.0-or-later
#include "vary/circumstances.h"

#include <algorithm>

#include "staddle/base/contract.h"

namespace staddle {
namespace {

void apply(const Circumstances& circumstances, StandProblem& problem) {
  StandCase& stand = problem.stand_case;
  stand.prices = circumstances.prices;
  stand.costs.rate = circumstances.rate;
  stand.costs.establishment = circumstances.establishment;
  stand.costs.annual_cost = circumstances.annual_cost;
  stand.growth_multiplier = circumstances.growth_multiplier;
  if (circumstances.storm_odds_ratio) {
    stand.hazard = with_odds_ratio(stand.hazard, *circumstances.storm_odds_ratio);
  }
}

// All values alike: that one.
template <class Values, class Reader>
std::optional<double> common_value(const Values& values, Reader read) {
  std::optional<double> common;
  for (const auto& value : values) {
    const std::optional<double> one = read(value);
    if (!one) continue;
    if (common && *common != *one) return std::nullopt;
    common = one;
  }
  return common;
}

}  // namespace

bool Circumstances::same_growth(const Circumstances& other) const {
  return site_index == other.site_index && planted == other.planted &&
         storm_odds_ratio == other.storm_odds_ratio &&
         growth_multiplier == other.growth_multiplier;
}

Circumstances todays(const VaryProblem& problem) {
  const StandCase& stand = problem.stand.stand_case;
  Circumstances now;
  now.rate = stand.costs.rate;
  now.prices = stand.prices;
  now.establishment = stand.costs.establishment;
  now.annual_cost = stand.costs.annual_cost;
  now.growth_multiplier = stand.growth_multiplier;
  return now;
}

void set_prices(const std::vector<Price>& stumpage, Circumstances& circumstances) {
  require(stumpage.size() == circumstances.prices.size(), "a price belongs to every product");
  for (std::size_t i = 0; i < stumpage.size(); ++i) {
    circumstances.prices[i].stumpage = stumpage[i];
  }
}

void set_parameter(const VaryProblem& problem, const Parameter& parameter, double value,
                   Circumstances& circumstances) {
  const StandCase& stand = problem.stand.stand_case;
  switch (parameter.kind) {
    case Parameter::Kind::product_price:
      circumstances.prices[parameter.product].stumpage =
          stand.prices[parameter.product].stumpage * (1.0 + value);
      return;
    case Parameter::Kind::establishment:
      circumstances.establishment = stand.costs.establishment * (1.0 + value);
      return;
    case Parameter::Kind::annual_cost:
      circumstances.annual_cost = stand.costs.annual_cost * (1.0 + value);
      return;
    case Parameter::Kind::real_discount_rate:
      circumstances.rate = DiscountRate::real(value);
      return;
    case Parameter::Kind::site_index:
      circumstances.site_index = feet(value);
      return;
    case Parameter::Kind::planted:
      circumstances.planted = trees_per_acre(value);
      return;
    case Parameter::Kind::thinning_price_factor:
      for (ProductPrice& price : circumstances.prices) price.thinning_factor = value;
      return;
    case Parameter::Kind::storm_odds_ratio:
      circumstances.storm_odds_ratio = value;
      return;
    case Parameter::Kind::growth_multiplier:
      circumstances.growth_multiplier = value;
      return;
  }
  throw ContractViolation("set_parameter knows every kind of parameter");
}

std::optional<double> todays_value(const VaryProblem& problem, const Parameter& parameter) {
  const StandCase& stand = problem.stand.stand_case;
  switch (parameter.kind) {
    case Parameter::Kind::product_price:
    case Parameter::Kind::establishment:
    case Parameter::Kind::annual_cost:
      return 0.0;
    case Parameter::Kind::real_discount_rate:
      return stand.costs.rate.per_year();
    case Parameter::Kind::site_index:
      if (!problem.site_index) return std::nullopt;
      return problem.site_index->in(feet);
    case Parameter::Kind::planted:
      if (!problem.planted) return std::nullopt;
      return problem.planted->in(trees_per_acre);
    case Parameter::Kind::thinning_price_factor:
      return common_value(stand.prices, [](const ProductPrice& price) {
        return std::optional(price.thinning_factor);
      });
    case Parameter::Kind::storm_odds_ratio:
      return common_value(stand.hazard.perils, [](const Peril& peril) -> std::optional<double> {
        if (!peril.logistic) return std::nullopt;
        return peril.logistic->thinning_odds_ratio;
      });
    case Parameter::Kind::growth_multiplier:
      return stand.growth_multiplier;
  }
  throw ContractViolation("todays_value knows every kind of parameter");
}

World world_of(const VaryProblem& problem, const Circumstances& circumstances) {
  World world{problem.stand, problem.successor};
  apply(circumstances, world.stand);
  if (world.successor) apply(circumstances, *world.successor);
  if (!circumstances.site_index && !circumstances.planted) return world;
  require(problem.equations && problem.site_index,
          "site index and planted trees belong to growth by equations");
  const Height site = circumstances.site_index.value_or(*problem.site_index);
  const auto planted = circumstances.planted ? circumstances.planted : problem.planted;
  const auto established = [&] {
    return GrowthModel::from_equations(*problem.equations, site + problem.site_index_shift,
                                       planted.value(), problem.response);
  };
  if (world.successor) world.successor->stand_case.growth = established();
  StandCase& stand = world.stand.stand_case;
  if (stand.standing) {
    // What a standing stand was planted with is past: its measured trees count.
    stand.growth = GrowthModel::from_equations(*problem.equations, site,
                                               problem.planted.value_or(stand.standing->trees));
  } else {
    stand.growth = established();
  }
  return world;
}

}  // namespace staddle
