// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/model_library.h"

#include <algorithm>

#include "io/embedded_files.h"
#include "io/model_readers.h"
#include "staddle/base/contract.h"

namespace staddle {
namespace {

std::string embedded_text(std::string_view name) {
  for (const EmbeddedFile& file : embedded_files()) {
    if (file.name == name) return std::string(file.content);
  }
  throw ContractViolation("the program carries no " + std::string(name));
}

// Takes the value out of a reading that cannot fail: the file is part of the program.
template <class Value>
Value built_in(const Result<Value>& read) {
  if (!read) throw ContractViolation(to_line(read.error().front()));
  return *read;
}

std::vector<EquationSet> read_equation_sets() {
  std::vector<EquationSet> sets;
  for (const EmbeddedFile& file : embedded_files()) {
    if (file.name.substr(0, 10) != "equations/") continue;
    sets.push_back(built_in(read_equation_set(std::string(file.content), std::string(file.name))));
  }
  std::sort(sets.begin(), sets.end(),
            [](const EquationSet& a, const EquationSet& b) { return a.id < b.id; });
  return sets;
}

const PerilCatalogue& peril_catalogue() {
  static const std::string name = "storm/perils.json";
  static const PerilCatalogue catalogue = built_in(read_perils(embedded_text(name), name));
  return catalogue;
}

}  // namespace

const std::vector<EquationSet>& built_in_equation_sets() {
  static const std::vector<EquationSet> sets = read_equation_sets();
  return sets;
}

const std::vector<StormZone>& built_in_storm_zones() {
  static const std::string name = "storm/zones.json";
  static const std::vector<StormZone> zones =
      built_in(read_storm_zones(embedded_text(name), name, peril_catalogue()));
  return zones;
}

Hazard hazard_of_zone(const StormZone& zone, Species species, double recovery_yr) {
  Hazard hazard{zone.id, species, recovery_yr, zone.perils};
  for (Peril& peril : hazard.perils) {
    if (!peril.logistic) continue;
    peril.logistic->species_log_odds = species_log_odds(species, peril.logistic->wind);
  }
  return hazard;
}

double species_log_odds(Species species, bool wind) {
  for (const PerilCatalogue::SpeciesLogOdds& row : peril_catalogue().species) {
    if (row.species == species) return wind ? row.wind : row.ice;
  }
  throw ContractViolation("storm/perils.json knows every species");
}

double default_storm_recovery_yr() { return peril_catalogue().recovery_yr; }

const std::vector<IndicatorPlant>& built_in_indicator_plants() {
  static const std::string name = "site/indicator_plants.json";
  static const std::vector<IndicatorPlant> plants =
      built_in(read_indicator_plants(embedded_text(name), name));
  return plants;
}

const std::vector<EstablishmentRecipe>& built_in_establishments() {
  static const std::vector<EstablishmentRecipe> recipes = [] {
    const std::string costs = "establishment/costs.json";
    const std::string responses = "establishment/responses.json";
    const std::string alternatives = "establishment/alternatives.json";
    return built_in(read_establishment_recipes(
        embedded_text(alternatives), alternatives,
        built_in(read_establishment_costs(embedded_text(costs), costs)),
        built_in(read_establishment_responses(embedded_text(responses), responses))));
  }();
  return recipes;
}

EstablishmentAlternative alternative_of(const EstablishmentRecipe& recipe, TreeDensity planted) {
  EstablishmentAlternative alternative{recipe.name,     recipe.methods,  {},
                                       planted,         recipe.site_index_shift,
                                       recipe.response, recipe.id,       recipe.sources};
  const double thousands = planted.in(trees_per_acre) / 1000.0;
  for (const EstablishmentRecipe::Cost& cost : recipe.costs) {
    alternative.practices.push_back(
        {cost.what, cost.at,
         cost.per_acre + dollars_per_acre(cost.usd_per_thousand_seedlings * thousands)});
  }
  return alternative;
}

const std::vector<std::string>& known_indicator_plants() {
  static const std::vector<std::string> names = [] {
    std::vector<std::string> list;
    for (const IndicatorPlant& plant : built_in_indicator_plants()) list.push_back(plant.name);
    return list;
  }();
  return names;
}

}  // namespace staddle
