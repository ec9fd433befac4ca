// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/io/model_library.h"

namespace staddle {

// One built-in way to start a stand in full: trees, methods, gains, what is paid when, and
// where the figures come from. JSON: format staddle-establishment-way/1.
std::string establishment_text(const EstablishmentRecipe& recipe);
std::string establishment_json(const EstablishmentRecipe& recipe);

}  // namespace staddle
