// SPDX-License-Identifier: GPL-3.0-or-later
#include "futures/fixture.h"

#include <algorithm>
#include <cmath>

namespace staddle::support {
namespace {

constexpr int first_row_yr = 5, last_row_yr = 60;

YieldTable pine_table() {
  YieldTable table;
  table.products = {"sawtimber", "pulpwood"};
  table.tons_ac.resize(2);
  for (int at = first_row_yr; at <= last_row_yr; ++at) {
    const double grown = 1.0 - std::exp(-0.05 * at);
    const double total = 160.0 * std::pow(grown, 2.5);
    const double sawtimber = std::clamp((at - 12) * 0.025, 0.0, 0.8);
    table.age_yr.push_back(at);
    table.dominant_height_ft.push_back(98.0 * std::pow(grown, 1.3));
    table.tpa.push_back(600.0 * std::exp(-0.018 * at));
    table.basal_area_ft2_ac.push_back(185.0 * std::pow(grown, 1.5));
    table.tons_ac[0].push_back(total * sawtimber);
    table.tons_ac[1].push_back(total * (1.0 - sawtimber));
  }
  return table;
}

Peril logistic_peril(const std::string& name, double probability, const LogisticShare& share,
                     double salvage, double cleanup_usd_ac) {
  Peril peril;
  peril.name = name;
  peril.annual_probability = probability;
  peril.logistic = share;
  peril.salvage_share = salvage;
  peril.cleanup = dollars_per_acre(cleanup_usd_ac);
  return peril;
}

Hazard coastal_hazard(double scale) {
  Hazard hazard;
  hazard.zone = "own";
  hazard.perils = {
      logistic_peril("moderate", 0.025 * scale, {0.12, feet(65), 0.45, 0.20, 3.0, true, 0}, 0.25,
                     100),
      logistic_peril("major", 0.008 * scale, {0.55, feet(65), 0.45, 0.20, 3.0, true, 0}, 0.10,
                     500),
      logistic_peril("wind", 0.002 * scale, {0.35, feet(65), 0.30, 0.20, 2.0, true, 0}, 0.40, 200),
      logistic_peril("ice", 0.005 * scale, {0.12, feet(50), -0.25, 0.25, 3.5, false, 0}, 0.35,
                     100)};
  return hazard;
}

double between(RandomStream& random, double low, double high) {
  return low + (high - low) * random.next_uniform();
}

int whole_between(RandomStream& random, int low, int high) {
  return low + static_cast<int>(random.next_below(static_cast<std::uint64_t>(high - low + 1)));
}

Regime random_regime(RandomStream& random, int present_yr) {
  Regime regime;
  int at = std::max(present_yr, whole_between(random, 8, 20));
  const int cuts = whole_between(random, 0, 2);
  for (int i = 0; i < cuts; ++i) {
    regime.thinnings.push_back({age(at), between(random, 0.1, 0.6)});
    at += whole_between(random, 1, 9);
  }
  regime.final_harvest = age(at + whole_between(random, 0, 20));
  return regime;
}

}  // namespace

Peril constant_peril(double annual_probability, double damage_share) {
  Peril peril;
  peril.name = "fire";
  peril.annual_probability = annual_probability;
  peril.constant_share = damage_share;
  return peril;
}

StandCase coastal_case() {
  const YieldTable table = pine_table();
  StandCase stand_case{GrowthModel::from_table(table),
                       Assortment::from_table(table),
                       {{dollars_per_ton(26)}, {dollars_per_ton(9)}},
                       {DiscountRate::real(0.05)},
                       coastal_hazard(1.0)};
  stand_case.costs.establishment = dollars_per_acre(350);
  stand_case.costs.annual_cost = dollars_per_acre(8);
  return stand_case;
}

StandCase standing_case() {
  StandCase stand_case = coastal_case();
  stand_case.standing = MeasuredStand{age(16), trees_per_acre(380), square_feet_per_acre(95),
                                      0.42, LastThinning{age(14), 0.4}, {}};
  stand_case.land_value = dollars_per_acre(600);
  return stand_case;
}

FuturesProblem header_example() {
  YieldTable table;
  table.products = {"timber"};
  table.age_yr = {10, 20, 21, 30};
  table.dominant_height_ft = {30, 50, 52, 60};
  table.tpa = {500, 400, 390, 300};
  table.basal_area_ft2_ac = {60, 100, 104, 120};
  table.tons_ac = {{20, 90, 100, 150}};
  StandCase stand_case{GrowthModel::from_table(table),
                       Assortment::from_table(table),
                       {{dollars_per_ton(10)}},
                       {DiscountRate::real(0.25)},
                       {}};
  stand_case.costs.regeneration_delay_yr = 0;
  stand_case.standing =
      MeasuredStand{age(20), trees_per_acre(400), square_feet_per_acre(100), {}, {}, {}};
  Peril storm = constant_peril(0.25, 0.5);
  storm.salvage_share = 0.2;
  storm.cleanup = dollars_per_acre(100);
  stand_case.hazard.perils = {storm};
  return {stand_case, {{{}, age(21)}}};
}

FuturesProblem random_problem(RandomStream& random) {
  FuturesProblem problem{random.next_below(2) == 0 ? coastal_case() : standing_case(), {}};
  StandCase& stand_case = problem.stand_case;
  stand_case.hazard = coastal_hazard(between(random, 0.3, 4.0));
  stand_case.hazard.recovery_yr = between(random, 1.0, 9.0);
  if (random.next_below(3) == 0) {
    stand_case.hazard.perils.push_back(constant_peril(0.02, between(random, 0.2, 1.0)));
  }
  Costs& costs = stand_case.costs;
  costs.rate = DiscountRate::real(between(random, 0.02, 0.09));
  costs.regeneration_delay_yr = whole_between(random, 0, 3);
  costs.sale_fee_fraction = between(random, 0.0, 0.1);
  costs.final_sale_cost = dollars_per_acre(between(random, 0, 30));
  costs.thinning_sale_cost = dollars_per_acre(between(random, 0, 30));
  costs.annual_income = dollars_per_acre(between(random, 0, 12));
  costs.practices = {{"release", age(2), dollars_per_acre(65)},
                     {"burn", age(18), dollars_per_acre(35)}};
  costs.flows = {{"straw", age(9), DatedFlow::Until::first_thinning, {}, dollars_per_acre(60)},
                 {"lease", age(17), DatedFlow::Until::age, age(25), dollars_per_acre(-5)}};
  for (int i = 0; i < 2; ++i) {
    problem.regimes.push_back(random_regime(random, stand_case.present().whole()));
  }
  return problem;
}

}  // namespace staddle::support
