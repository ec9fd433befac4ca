// SPDX-License-Identifier: GPL-3.0-or-later
#include "plant/plant_fixture.h"

#include "support/loblolly_equations.h"

namespace staddle::plant_tests {

StandProblem Land::stand(const EstablishmentAlternative& alternative) const {
  StandCase stand_case{
      GrowthModel::from_equations(equations, site_index + alternative.site_index_shift,
                                  alternative.planted.value(), alternative.response),
      Assortment::from_equations(equations, default_products()),
      {{dollars_per_ton(25)}, {dollars_per_ton(18)}, {dollars_per_ton(7)}},
      {DiscountRate::real(0.05)},
      hazard};
  stand_case.costs.establishment = alternative.establishment();
  stand_case.costs.practices = alternative.later_practices();
  return {stand_case, lattice, acres(40)};
}

PlantProblem Land::problem() const {
  PlantProblem problem;
  problem.alternatives = alternatives;
  problem.stand = [land = *this](const EstablishmentAlternative& alternative) {
    return land.stand(alternative);
  };
  problem.site = site;
  problem.equations = equations;
  problem.site_index = site_index;
  problem.tax = tax;
  return problem;
}

namespace {

EquationSet fitted(EquationSet set) {
  set.species = "loblolly pine, planted";
  set.fitted_age_yr = {10, 25};
  set.fitted_tpa = {100, 1000};
  set.fitted_site_index_ft = {45, 90};
  return set;
}

}  // namespace

Land coastal_land() {
  Land land;
  land.equations = fitted(support::coastal_loblolly());
  land.lattice.max_thinnings = 1;
  land.lattice.removal_fractions = {0.25, 1.0 / 3.0};
  land.lattice.guards = default_guards();
  return land;
}

Land upland_land() {
  Land land = coastal_land();
  land.equations = fitted(support::upland_loblolly());
  return land;
}

EstablishmentAlternative way(const std::string& name, double planted_tpa, double usd_ac,
                             double years_gained) {
  EstablishmentAlternative alternative;
  alternative.name = name;
  alternative.planted = trees_per_acre(planted_tpa);
  alternative.practices = {{"all of it", age(0), dollars_per_acre(usd_ac)}};
  alternative.response.years_gained = years_gained;
  return alternative;
}

}  // namespace staddle::plant_tests
