// SPDX-License-Identifier: GPL-3.0-or-later
#include "scenario/scenario_by_hand.h"

#include "support/loblolly_equations.h"

namespace staddle::scenario_tests {

Scenario bare_land_by_hand() {
  Scenario scenario;
  scenario.title = "by hand";
  scenario.area = acres(40);
  scenario.stand.source = support::coastal_loblolly();
  scenario.stand.site_index = feet(70);
  scenario.stand.planted = trees_per_acre(600);
  scenario.products = default_products();
  for (const double price : {25.0, 18.0, 7.0}) {
    ProductPrice of_product;
    of_product.stumpage = dollars_per_ton(price);
    scenario.prices.push_back(of_product);
  }
  scenario.costs.rate = DiscountRate::real(0.05);
  scenario.costs.establishment = dollars_per_acre(350);
  scenario.costs.annual_cost = dollars_per_acre(8);
  scenario.lattice.removal_fractions = {0.25, 1.0 / 3};
  scenario.cut_diameter_ratios = {0.95};
  return scenario;
}

Scenario standing_by_hand() {
  Scenario scenario = bare_land_by_hand();
  MeasuredStand measured;
  measured.at = age(17);
  measured.trees = trees_per_acre(480);
  measured.basal_area = square_feet_per_acre(132);
  scenario.stand.standing = measured;
  return scenario;
}

Scenario table_by_hand() {
  Scenario scenario = bare_land_by_hand();
  YieldTable table;
  table.file = "table.csv";
  table.age_yr = {10, 20, 30, 40};
  table.dominant_height_ft = {34, 60, 78, 90};
  table.tpa = {540, 450, 350, 280};
  table.basal_area_ft2_ac = {80, 145, 168, 175};
  table.products = {"logs", "pulp"};
  table.tons_ac = {{0, 15, 70, 110}, {30, 80, 75, 65}};
  scenario.stand = {};
  scenario.stand.source = table;
  scenario.products = {{"logs", {}, {}}, {"pulp", {}, {}}};
  scenario.prices.resize(2);
  return scenario;
}

}  // namespace staddle::scenario_tests
