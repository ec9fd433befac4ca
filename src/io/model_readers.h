// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

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

Result<std::vector<IndicatorPlant>> read_indicator_plants(const std::string& text,
                                                          const std::string& file);

}  // namespace staddle
