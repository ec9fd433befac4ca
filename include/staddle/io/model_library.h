// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/growth/equation_set.h"
#include "staddle/hazard/perils.h"
#include "staddle/plant/establishment.h"

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

// What a species adds to the log-odds of a peril's share, by wind or by ice.
double species_log_odds(Species species, bool wind);
// Years until an opened stand is as firm as before, where a scenario gives none.
double default_storm_recovery_yr();

// A plant whose presence says something of the ground, from models/site.
struct IndicatorPlant {
  std::string name;
  std::string indicates;  // "deep sand" or "wet flatwoods"
  std::string mark;       // where the statement comes from
};
const std::vector<IndicatorPlant>& built_in_indicator_plants();

// Their names: what the site block may list.
const std::vector<std::string>& known_indicator_plants();

// A way to start a stand, from models/establishment: costs and responses put together.
struct EstablishmentRecipe {
  struct Cost {
    std::string what;
    Age at;
    MoneyPerAcre per_acre;
    double usd_per_thousand_seedlings = 0.0;
  };
  std::string id, name;
  std::vector<SiteMethod> methods;
  std::vector<Cost> costs;
  TreeDensity planted;
  Height site_index_shift;
  EstablishmentResponse response;
  std::vector<std::string> sources;  // of its figures, a sentence each
};
const std::vector<EstablishmentRecipe>& built_in_establishments();

// The recipe with so many trees; seedlings are paid for by their number.
EstablishmentAlternative alternative_of(const EstablishmentRecipe& recipe, TreeDensity planted);

}  // namespace staddle
