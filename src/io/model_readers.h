// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "staddle/base/result.h"
#include "staddle/growth/equation_set.h"
#include "staddle/io/model_library.h"
#include "staddle/io/option.h"

// The formats of models/, described in models/README.md, read as strictly as a
// scenario.
namespace staddle {

std::span<const Option> equation_set_options();
Result<EquationSet> read_equation_set(const std::string& text, const std::string& file);

// The perils by their ids, before a zone gives them probabilities, and what a species
// adds to their log-odds.
struct PerilCatalogue {
  std::vector<std::string> ids;
  std::vector<Peril> perils;  // probability 0
  struct SpeciesLogOdds {
    Species species = Species::loblolly;
    double wind = 0.0;
    double ice = 0.0;
  };
  std::vector<SpeciesLogOdds> species;
  double recovery_yr = 0.0;
  std::string source;
};
Result<PerilCatalogue> read_perils(const std::string& text, const std::string& file);
Result<std::vector<StormZone>> read_storm_zones(const std::string& text, const std::string& file,
                                                const PerilCatalogue& catalogue);

// What things cost and what treatments gain, by their ids, each with its source as a
// sentence; and the recipes made from them.
struct EstablishmentCosts {
  struct Cost {
    std::string id, what, source;
    std::optional<double> usd_ac, usd_per_thousand;
  };
  std::vector<Cost> costs;
};
struct EstablishmentResponses {
  struct Gain {
    std::string id, what, treatment, source;
    double years_gained = 0.0, site_index_shift_ft = 0.0;
  };
  struct Increment {
    std::string treatment;
    double m3_ha_yr = 0.0;
  };
  double most_years_together = 0.0;
  std::vector<Gain> gains;
  std::vector<Increment> increments;
};
Result<EstablishmentCosts> read_establishment_costs(const std::string& text,
                                                    const std::string& file);
Result<EstablishmentResponses> read_establishment_responses(const std::string& text,
                                                            const std::string& file);
Result<std::vector<EstablishmentRecipe>> read_establishment_recipes(
    const std::string& text, const std::string& file, const EstablishmentCosts& costs,
    const EstablishmentResponses& responses);

Result<std::vector<IndicatorPlant>> read_indicator_plants(const std::string& text,
                                                          const std::string& file);

}  // namespace staddle
