// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/tract_plan.h"

namespace staddle {
namespace {

template <class Unit>
auto quantity(const Place& place, Unit unit) -> std::optional<decltype(unit(0.0))> {
  const auto value = place.number();
  if (!value) return std::nullopt;
  return unit(*value);
}

IncomeFloor read_floor(const Place& place) {
  IncomeFloor floor;
  floor.from_year = place["from_year"].whole().value_or(1);
  floor.to_year = place["to_year"].whole().value_or(floor.from_year);
  floor.per_year = dollars(place["per_year"].number_or_zero());
  return floor;
}

TonsLimit read_tons(const Place& place, FaultList& faults) {
  TonsLimit limit;
  limit.product = place["product"].text_or_empty();
  limit.min_per_period = quantity(place["min_per_period"], tons);
  limit.max_per_period = quantity(place["max_per_period"], tons);
  limit.max_change_fraction = place["max_change_fraction"].number();
  const bool says_something = place["min_per_period"].given() || place["max_per_period"].given() ||
                              place["max_change_fraction"].given();
  if (place.is(kinds::object) && !says_something) {
    faults.add(place.order(), FaultCode::missing_key, place.pointer(),
               "this limits nothing: it needs min_per_period, max_per_period or "
               "max_change_fraction");
  }
  return limit;
}

OpenStand read_open_stand(const Place& place) {
  OpenStand open;
  open.basal_area_below = square_feet_per_acre(place["basal_area_below_ft2_ac"].number_or_zero());
  open.acres_min = acres(place["acres_min"].number_or_zero());
  open.from_year = place["from_year"].whole().value_or(1);
  return open;
}

}  // namespace

TractPlan read_tract_plan(const Place& place, FaultList& faults) {
  TractPlan plan;
  plan.years = place["years"].whole().value_or(plan.years);
  plan.period_yr = place["period_yr"].whole().value_or(plan.period_yr);
  for (const Place& item : place["income_floor_usd"].items()) {
    plan.income_floors.push_back(read_floor(item));
  }
  plan.income_max_drop_fraction = place["income_max_drop_fraction"].number();
  plan.final_harvest_acres_max_per_period =
      quantity(place["final_harvest_acres_max_per_period"], acres);
  plan.group_final_harvest_acres_max_per_period =
      quantity(place["group_final_harvest_acres_max_per_period"], acres);
  for (const Place& item : place["tons"].items()) plan.tons.push_back(read_tons(item, faults));
  const Place open = place["open_stand"];
  if (open.is(kinds::object)) plan.open_stand = read_open_stand(open);
  plan.ending_value_min_fraction = place["ending_value_min_fraction"].number();
  plan.establishment_max_per_period = quantity(place["establishment_usd_max_per_period"], dollars);
  plan.whole_stands = place["whole_stands"].boolean().value_or(false);
  return plan;
}

}  // namespace staddle
