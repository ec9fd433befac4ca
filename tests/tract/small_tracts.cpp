// SPDX-License-Identifier: GPL-3.0-or-later
#include "tract/small_tracts.h"

#include <algorithm>
#include <string>
#include <utility>

#include "support/loblolly_equations.h"

namespace staddle::support {
namespace {

double between(RandomStream& random, double low, double high) {
  return low + (high - low) * random.next_uniform();
}
int whole_between(RandomStream& random, int low, int high) {
  return low + static_cast<int>(random.next_below(static_cast<std::uint64_t>(high - low + 1)));
}
bool chance(RandomStream& random, double probability) {
  return random.next_uniform() < probability;
}

// At $10 a ton.
YieldTable example_table(const std::vector<double>& tons_ac) {
  YieldTable table;
  table.file = "example.csv";
  table.age_yr = {20, 21, 22, 23};
  table.dominant_height_ft = {50, 52, 54, 56};
  table.tpa = {300, 300, 300, 300};
  table.basal_area_ft2_ac = {100, 105, 110, 115};
  table.products = {"pulpwood"};
  table.tons_ac = {tons_ac};
  return table;
}

TractStand example_stand(const std::string& name, int age_yr, double area, double basal_area,
                         const YieldTable& table) {
  StandCase stand_case{GrowthModel::from_table(table),
                       Assortment::from_table(table),
                       {{dollars_per_ton(10)}},
                       {DiscountRate::real(0.25)},
                       {}};
  stand_case.costs.regeneration_delay_yr = 0;
  MeasuredStand measured;
  measured.at = age(age_yr);
  measured.trees = trees_per_acre(300);
  measured.basal_area = square_feet_per_acre(basal_area);
  stand_case.standing = measured;
  DecisionLattice lattice;
  lattice.max_thinnings = 0;
  lattice.final_from = age(age_yr);
  lattice.final_to = age(age_yr + 2);
  TractStand stand{name, "", {stand_case, lattice, acres(area)}};
  stand.after_harvest = {LandAfterHarvest::Kind::land_price, MoneyPerAcre()};
  return stand;
}

Costs random_costs(RandomStream& random) {
  Costs costs{DiscountRate::real(between(random, 0.03, 0.08))};
  costs.establishment = dollars_per_acre(between(random, 150, 400));
  costs.sale_fee_fraction = chance(random, 0.5) ? between(random, 0, 0.1) : 0.0;
  costs.thinning_sale_cost = dollars_per_acre(between(random, 0, 25));
  costs.final_sale_cost = dollars_per_acre(between(random, 0, 25));
  costs.regeneration_delay_yr = whole_between(random, 0, 2);
  costs.annual_cost = dollars_per_acre(between(random, 0, 10));
  if (chance(random, 0.4)) costs.annual_income = dollars_per_acre(between(random, 0, 9));
  if (chance(random, 0.5)) {
    costs.practices.push_back(
        {"release", age(whole_between(random, 0, 20)), dollars_per_acre(between(random, 5, 80))});
  }
  if (chance(random, 0.5)) {
    DatedFlow flow{"straw", age(whole_between(random, 6, 14)), DatedFlow::Until::first_thinning,
                   age(0), dollars_per_acre(between(random, -20, 60))};
    flow.until = static_cast<DatedFlow::Until>(random.next_below(3));
    if (flow.until == DatedFlow::Until::age) flow.to = flow.from + years(5);
    costs.flows.push_back(flow);
  }
  return costs;
}

Hazard random_storms(RandomStream& random) {
  Hazard hazard;
  hazard.zone = "random";
  Peril total;
  total.name = "total loss";
  total.annual_probability = between(random, 0.0, 0.03);
  total.constant_share = between(random, 0.3, 1.0);
  total.salvage_share = between(random, 0.0, 0.5);
  total.cleanup = dollars_per_acre(between(random, 0, 300));
  hazard.perils.push_back(total);
  return hazard;
}

DecisionLattice random_lattice(RandomStream& random) {
  DecisionLattice lattice;
  lattice.max_thinnings = whole_between(random, 0, 2);
  const int from = whole_between(random, 12, 16);
  lattice.thinning_from = age(from);
  lattice.thinning_to = age(from + whole_between(random, 2, 9));
  lattice.years_between_entries = whole_between(random, 3, 6);
  const int final_from = whole_between(random, 20, 25);
  lattice.final_from = age(final_from);
  lattice.final_to = age(final_from + whole_between(random, 4, 12));
  lattice.removal_fractions = {0.25, 1.0 / 3.0};
  if (chance(random, 0.3)) lattice.removal_fractions.push_back(0.45);
  if (chance(random, 0.3)) lattice.guards = default_guards();
  if (chance(random, 0.2)) lattice.min_sale = tons(between(random, 200, 900));
  return lattice;
}

LandAfterHarvest random_land(RandomStream& random) {
  LandAfterHarvest land;
  land.kind = static_cast<LandAfterHarvest::Kind>(random.next_below(3));
  land.price = dollars_per_acre(between(random, 0, 1500));
  return land;
}

TractStand random_stand(RandomStream& random, const TractKind& kind, int number) {
  const EquationSet set = chance(random, 0.5) ? coastal_loblolly() : upland_loblolly();
  StandCase stand_case{GrowthModel::from_equations(set, feet(between(random, 60, 80)),
                                                   trees_per_acre(between(random, 400, 800))),
                       Assortment::from_equations(set, default_products()),
                       {{dollars_per_ton(between(random, 20, 32))},
                        {dollars_per_ton(between(random, 12, 20))},
                        {dollars_per_ton(between(random, 4, 10))}},
                       random_costs(random),
                       {}};
  if (kind.storms) stand_case.hazard = random_storms(random);
  const DecisionLattice lattice = random_lattice(random);
  TractStand stand{"stand " + std::to_string(number),
                   chance(random, 0.6) ? (chance(random, 0.5) ? "east" : "west") : "",
                   {stand_case, lattice, acres(between(random, 15, 90))}};
  if (chance(random, 0.25)) return stand;  // bare land
  stand.successor = stand.problem;
  MeasuredStand measured;
  const int at = whole_between(random, 10, lattice.final_to.whole() - 3);
  measured.at = age(at);
  measured.trees = trees_per_acre(between(random, 250, 600));
  measured.basal_area = square_feet_per_acre(between(random, 80, 150));
  if (chance(random, 0.3)) {
    measured.last_thinning = LastThinning{age(at - whole_between(random, 0, 4)), 0.33};
  }
  stand.problem.stand_case.standing = measured;
  stand.after_harvest = random_land(random);
  return stand;
}

}  // namespace

// Sells for 400, 550, 750 and 1,000 dollars an acre at ages 20 to 23.
TractProblem two_stands() { return two_stands_worth({40, 55, 75, 100}); }

TractProblem two_stands_worth(const std::vector<double>& tons_ac) {
  const YieldTable table = example_table(tons_ac);
  TractProblem tract;
  tract.stands = {example_stand("A", 20, 100, 100, table), example_stand("B", 21, 50, 105, table)};
  tract.plan.years = 2;
  tract.plan.period_yr = 1;
  tract.calendar_year = 2030;
  return tract;
}

TractProblem random_tract(RandomStream& random, const TractKind& kind) {
  TractProblem tract;
  for (int i = 0; i < kind.stands; ++i) tract.stands.push_back(random_stand(random, kind, i));
  tract.plan.period_yr = whole_between(random, 1, 4);
  tract.plan.years = tract.plan.period_yr * whole_between(random, 3, 6);
  if (chance(random, 0.7)) tract.calendar_year = 2030;
  return tract;
}

void add_random_limits(RandomStream& random, TractProblem& problem) {
  TractPlan& plan = problem.plan;
  const double area = [&] {
    double sum = 0.0;
    for (const TractStand& stand : problem.stands) sum += stand.problem.acres.in(acres);
    return sum;
  }();
  if (chance(random, 0.6)) {
    const int from = whole_between(random, 1, plan.years);
    plan.income_floors.push_back(
        {from, whole_between(random, from, plan.years), dollars(area * between(random, 5, 90))});
  }
  if (chance(random, 0.3)) plan.income_max_drop_fraction = between(random, 0.2, 0.8);
  if (chance(random, 0.5)) {
    plan.final_harvest_acres_max_per_period = acres(area * between(random, 0.15, 0.7));
  }
  if (chance(random, 0.3)) {
    plan.group_final_harvest_acres_max_per_period = acres(area * between(random, 0.1, 0.4));
  }
  if (chance(random, 0.4)) {
    TonsLimit limit{chance(random, 0.5) ? "all" : "sawtimber", {}, {}, {}};
    if (chance(random, 0.4)) limit.min_per_period = tons(area * between(random, 0.1, 4));
    if (chance(random, 0.5)) limit.max_per_period = tons(area * between(random, 10, 60));
    if (chance(random, 0.2)) limit.max_change_fraction = between(random, 0.3, 0.9);
    plan.tons.push_back(limit);
  }
  if (chance(random, 0.3)) {
    plan.open_stand =
        OpenStand{square_feet_per_acre(between(random, 50, 110)),
                  acres(area * between(random, 0.02, 0.3)), whole_between(random, 1, plan.years)};
  }
  if (chance(random, 0.4)) plan.ending_value_min_fraction = between(random, 0.3, 1.2);
  if (chance(random, 0.3)) {
    plan.establishment_max_per_period = dollars(area * between(random, 60, 400));
  }
}

}  // namespace staddle::support
