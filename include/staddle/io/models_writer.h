// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/growth/equation_set.h"
#include "staddle/io/model_library.h"

namespace staddle {

// Growth models in brief, for a choice among them: id, species, region, source and the
// ranges within which they were fitted; and the ways to start a stand, by id and name. JSON:
// format staddle-models/1.
std::string models_text(const std::vector<EquationSet>& models,
                        const std::vector<EstablishmentRecipe>& ways);
std::string models_json(const std::vector<EquationSet>& models,
                        const std::vector<EstablishmentRecipe>& ways);

// One model in full: each equation in use with its coefficients, and what to know of it.
// JSON: format staddle-model/1.
std::string model_text(const EquationSet& model);
std::string model_json(const EquationSet& model);

}  // namespace staddle
