// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/random_problem.h"

#include <algorithm>
#include <cmath>

#include "support/loblolly_equations.h"

namespace staddle::support {
namespace {

double between(RandomStream& random, double low, double high) {
  return low + (high - low) * random.next_uniform();
}

int whole_between(RandomStream& random, int low, int high) {
  return low + static_cast<int>(random.next_below(static_cast<std::uint64_t>(high - low + 1)));
}

bool chance(RandomStream& random, double share) { return random.next_uniform() < share; }

Peril logistic(const char* name, double probability, LogisticShare share, double salvage,
               double cleanup) {
  Peril peril;
  peril.name = name;
  peril.annual_probability = probability;
  peril.logistic = share;
  peril.salvage_share = salvage;
  peril.cleanup = dollars_per_acre(cleanup);
  return peril;
}

PriceList random_prices(RandomStream& random, std::size_t products) {
  PriceList prices;
  double price = between(random, 18, 40);
  for (std::size_t i = 0; i < products; ++i) {
    ProductPrice entry;
    entry.stumpage = dollars_per_ton(price);
    if (chance(random, 0.4)) entry.thinning_factor = between(random, 0.6, 1.1);
    if (chance(random, 0.3)) entry.thinning_discount = dollars_per_ton(between(random, 0, 4));
    prices.push_back(entry);
    price *= between(random, 0.3, 0.9);
  }
  return prices;
}

Costs random_costs(RandomStream& random) {
  Costs costs{DiscountRate::real(between(random, 0.02, 0.09))};
  costs.establishment = dollars_per_acre(between(random, 50, 500));
  if (chance(random, 0.5)) costs.sale_fee_fraction = between(random, 0, 0.12);
  if (chance(random, 0.3)) costs.harvest_tax_fraction = between(random, 0, 0.04);
  if (chance(random, 0.4)) costs.thinning_sale_cost = dollars_per_acre(between(random, 0, 30));
  if (chance(random, 0.4)) costs.final_sale_cost = dollars_per_acre(between(random, 0, 30));
  costs.regeneration_delay_yr = whole_between(random, 0, 3);
  costs.annual_cost = dollars_per_acre(between(random, 0, 10));
  if (chance(random, 0.3)) costs.annual_income = dollars_per_acre(between(random, 0, 12));
  if (chance(random, 0.4)) {
    costs.practices.push_back(
        {"release", age(whole_between(random, 0, 24)), dollars_per_acre(between(random, 5, 90))});
  }
  if (chance(random, 0.4)) {
    DatedFlow straw{"straw", age(whole_between(random, 6, 15)), DatedFlow::Until::first_thinning,
                    age(0), dollars_per_acre(between(random, -20, 80))};
    straw.until = static_cast<DatedFlow::Until>(random.next_below(3));
    if (straw.until == DatedFlow::Until::age) straw.to = straw.from + years(6);
    costs.flows.push_back(straw);
  }
  return costs;
}

MeasuredStand random_stand(RandomStream& random, int low_age, int high_age) {
  MeasuredStand stand;
  const int at = whole_between(random, low_age, high_age);
  stand.at = age(at);
  stand.trees = trees_per_acre(between(random, 80, 750));
  stand.basal_area = square_feet_per_acre(between(random, 55, 190));
  if (chance(random, 0.4)) stand.live_crown_ratio = between(random, 0.22, 0.5);
  if (chance(random, 0.3)) {
    stand.last_thinning = LastThinning{age(at - whole_between(random, 0, 7)),
                                       between(random, 0.1, 0.5)};
  }
  if (chance(random, 0.2)) {
    stand.other_timber.push_back({"hardwood", tons_per_acre(between(random, 1, 20)),
                                  between(random, -0.02, 0.04), dollars_per_ton(10)});
  }
  return stand;
}

DecisionLattice random_lattice(RandomStream& random, const ProblemKind& kind) {
  DecisionLattice lattice;
  lattice.max_thinnings =
      kind.just_so || chance(random, 0.5) ? kind.max_thinnings
                                          : whole_between(random, 0, kind.max_thinnings);
  const int from = whole_between(random, 8, 18);
  lattice.thinning_from = age(from);
  lattice.thinning_to = age(from + whole_between(random, kind.years / 4, kind.years));
  lattice.years_between_entries = whole_between(random, 2, 7);
  const int final_from = whole_between(random, 16, 28);
  lattice.final_from = age(final_from);
  lattice.final_to = age(final_from + whole_between(random, 4, 22));
  double removal = between(random, 0.08, 0.25);
  const int count = whole_between(random, (kind.removals + 1) / 2, kind.removals);
  for (int i = 0; i < count && removal < 0.85; ++i) {
    lattice.removal_fractions.push_back(removal);
    removal += between(random, 0.01, 0.15);
  }
  if (chance(random, 0.35)) lattice.guards = default_guards();
  if (chance(random, 0.2)) {
    lattice.guards = {};
    lattice.guards.min_live_crown_ratio = between(random, 0.2, 0.4);
    lattice.guards.min_residual_basal_area = square_feet_per_acre(between(random, 30, 80));
  }
  if (chance(random, 0.25)) lattice.min_removal = tons_per_acre(between(random, 5, 30));
  if (chance(random, 0.15)) lattice.min_sale = tons(between(random, 200, 900));
  if (chance(random, 0.15)) {
    lattice.min_residual_basal_area = square_feet_per_acre(between(random, 20, 70));
  }
  return lattice;
}

// As sites are prepared, and somewhat beyond.
EstablishmentResponse random_response(RandomStream& random, const EquationSet& set) {
  EstablishmentResponse response;
  if (chance(random, 0.8)) response.years_gained = between(random, -2, 6);
  if (set.hardwood_per_percent && chance(random, 0.7)) {
    response.hardwood_percent = between(random, 0, 60);
  }
  if (chance(random, 0.5)) {
    response.precommercial = PrecommercialThinning{age(whole_between(random, 2, 7)),
                                                   trees_per_acre(between(random, 200, 800))};
  }
  return response;
}

// Diameters that fall from a row on, so that some stand at two ages.
void thin_diameters(RandomStream& random, YieldTable& table) {
  const int rows = static_cast<int>(table.age_yr.size());
  for (int row = whole_between(random, rows / 3, rows - 2); row < rows; ++row) {
    table.basal_area_ft2_ac[static_cast<std::size_t>(row)] *= between(random, 0.6, 0.95);
  }
}

}  // namespace

Hazard random_hazard(RandomStream& random) {
  Hazard hazard;
  hazard.zone = "random";
  if (chance(random, 0.15)) {
    Peril fire;
    fire.name = "total loss";
    fire.annual_probability = between(random, 0.0, 0.03);
    fire.constant_share = between(random, 0.3, 1.0);
    fire.salvage_share = between(random, 0.0, 0.6);
    fire.cleanup = dollars_per_acre(between(random, 0, 300));
    hazard.perils.push_back(fire);
    if (chance(random, 0.5)) return hazard;
  }
  if (chance(random, 0.3)) hazard.recovery_yr = between(random, 1.0, 12.0);
  const double scale = between(random, 0.2, 1.5);
  hazard.perils.push_back(logistic(
      "moderate hurricane", 0.025 * scale, {0.12, feet(65), 0.45, 0.20, 3.0, true, 0}, 0.25, 100));
  hazard.perils.push_back(logistic(
      "major hurricane", 0.008 * scale, {0.55, feet(65), 0.45, 0.20, 3.0, true, 0}, 0.10, 500));
  hazard.perils.push_back(
      logistic("local wind", 0.002, {0.35, feet(65), 0.30, 0.20, 2.0, true, 0}, 0.40, 200));
  hazard.perils.push_back(logistic("ice", between(random, 0, 0.035),
                                   {0.12, feet(50), -0.25, 0.25, 3.5, false, 0.3}, 0.35, 100));
  if (chance(random, 0.2)) hazard = with_odds_ratio(hazard, between(random, 0.5, 6.0));
  return hazard;
}

YieldTable random_table(RandomStream& random) {
  YieldTable table;
  table.file = "random.csv";
  table.products = {"sawtimber", "chip_n_saw", "pulpwood"};
  table.tons_ac.resize(3);
  const double site = between(random, 55, 85);
  const int first = whole_between(random, 3, 8);
  for (int at = first; at <= 60; at += 3) {
    const double grown = 1.0 - std::exp(-0.05 * at);
    const double height = site * std::pow(grown, 1.3) * 1.4;
    table.age_yr.push_back(at);
    table.dominant_height_ft.push_back(height);
    table.tpa.push_back(600.0 * std::exp(-0.018 * at));
    table.basal_area_ft2_ac.push_back(at < 7 ? 0.0 : 190.0 * std::pow(grown, 1.5));
    const double total = at < 7 ? 0.0 : 2.6 * height * std::pow(grown, 2.0);
    const double sawtimber = std::clamp((at - 18) * 0.015, 0.0, 0.6);
    const double chip_n_saw = std::clamp((at - 11) * 0.03, 0.0, 0.9 - sawtimber);
    table.tons_ac[0].push_back(total * sawtimber);
    table.tons_ac[1].push_back(total * chip_n_saw);
    table.tons_ac[2].push_back(total * (1.0 - sawtimber - chip_n_saw));
  }
  return table;
}

StandProblem random_problem(RandomStream& random, const ProblemKind& kind) {
  const DecisionLattice lattice = random_lattice(random, kind);
  const bool table = chance(random, 0.08) || kind.tables;
  const auto models = [&]() -> std::pair<GrowthModel, Assortment> {
    if (table) {
      YieldTable rows = random_table(random);
      if (kind.tables && chance(random, 0.4)) thin_diameters(random, rows);
      return {GrowthModel::from_table(rows), Assortment::from_table(rows)};
    }
    const EquationSet set = chance(random, 0.5) ? coastal_loblolly() : upland_loblolly();
    std::vector<ProductLimit> products = default_products();
    if (chance(random, 0.2)) products[0].grade_fraction = between(random, 0.3, 1.0);
    if (chance(random, 0.2)) products.erase(products.begin());
    const Height site = feet(between(random, 50, 90));
    const TreeDensity planted =
        trees_per_acre(between(random, 250, kind.responses ? 4000 : 1100));
    const EstablishmentResponse response =
        kind.responses ? random_response(random, set) : EstablishmentResponse{};
    return {GrowthModel::from_equations(set, site, planted, response),
            Assortment::from_equations(set, products)};
  }();
  StandCase stand_case{models.first, models.second, {}, random_costs(random), {}};
  stand_case.prices = random_prices(random, stand_case.assortment.size());
  if (kind.storms) stand_case.hazard = random_hazard(random);
  if (chance(random, 0.4)) stand_case.thinning_response = ThinningResponse::as_published;
  stand_case.cut_diameter_ratios = {between(random, 0.85, 1.1)};
  if (chance(random, 0.4)) {
    stand_case.cut_diameter_ratios = {1.0, between(random, 0.85, 0.98)};
  }
  if (chance(random, 0.2)) stand_case.growth_multiplier = chance(random, 0.5) ? 0.85 : 1.15;
  if (chance(random, 0.45)) {
    stand_case.standing = random_stand(random, 9, lattice.final_to.whole() - 2);
    stand_case.land_value = dollars_per_acre(between(random, -200, 1200));
  }
  return {stand_case, lattice, acres(between(random, 5, 120))};
}

StandProblem plain_problem() {
  const EquationSet set = coastal_loblolly();
  StandCase stand_case{
      GrowthModel::from_equations(set, feet(70), trees_per_acre(600)),
      Assortment::from_equations(set, default_products()),
      {{dollars_per_ton(25)}, {dollars_per_ton(18)}, {dollars_per_ton(7)}},
      {DiscountRate::real(0.05)},
      {}};
  stand_case.costs.establishment = dollars_per_acre(350);
  DecisionLattice lattice;
  lattice.removal_fractions = {0.20, 0.25, 0.30, 1.0 / 3.0, 0.40, 0.45, 0.50};
  lattice.guards = default_guards();
  return {stand_case, lattice, acres(40)};
}

}  // namespace staddle::support
