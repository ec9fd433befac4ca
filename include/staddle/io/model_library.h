// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/growth/equation_set.h"
#include "staddle/hazard/perils.h"

namespace staddle {

// The models built into the program (models/ of the repository, embedded), in the
// order of their ids. A fault in an embedded file is a ContractViolation: a test
// reads them all.
const std::vector<EquationSet>& built_in_equation_sets();

// A storm zone: its id, where it is, and its perils, every number an assumption.
struct StormZone {
  std::string id;
  std::string where;
  std::vector<Peril> perils;  // none: hazard off
  std::string source;
};
const std::vector<StormZone>& built_in_storm_zones();

// The species' log-odds are added to each logistic peril, by wind or ice.
Hazard hazard_of_zone(const StormZone& zone, Species species, double recovery_yr);

// Names of plants that the site block may list, from models/site.
const std::vector<std::string>& known_indicator_plants();

}  // namespace staddle
