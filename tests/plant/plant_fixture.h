// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/plant/plant_problem.h"

namespace staddle::plant_tests {

// Ways on one site, prices 7/18/25, 5 percent: the problem that single tests vary.
struct Land {
  EquationSet equations;
  Height site_index = feet(70);
  DecisionLattice lattice;
  Hazard hazard;
  std::vector<EstablishmentAlternative> alternatives;
  SiteFacts site;
  std::optional<TaxRules> tax;

  StandProblem stand(const EstablishmentAlternative& alternative) const;
  PlantProblem problem() const;
};

// Coastal fit, guards on, at most one thinning of a quarter or a third.
Land coastal_land();
Land upland_land();

// Planted so, at that cost.
EstablishmentAlternative way(const std::string& name, double planted_tpa, double usd_ac,
                             double years_gained = 0.0);

}  // namespace staddle::plant_tests
