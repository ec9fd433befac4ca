// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/plant/plant_problem.h"
#include "staddle/plant/plant_solution.h"

namespace staddle {

// Why an alternative may not be advised on this site; empty where nothing stands against
// it. Beds need the owner's statement on wet ground (site.wet_site_statement): wetlands and
// hydric soils are protected, and bedding for pine is done only where pine was about half of
// the old stand or more (common practice, no source). A practice that speaks of beds is one,
// whatever the methods say.
std::string shut_by(const EstablishmentAlternative& alternative, const SiteFacts& site);

// The rules of time and the cautions that these alternatives meet on this site, from
// "common practice, no source" unless the text says otherwise: spray window by the month of
// cutting, eight weeks from spraying to burning, sprouting below age four, planting season,
// wetlands. Cautions on herbicides, fire and wetlands always.
std::vector<PlantGate> plant_gates(const PlantProblem& problem);

// Which species the site asks for, with reasons, and how each can be priced.
std::vector<SpeciesAdvice> species_advice(const PlantProblem& problem);

}  // namespace staddle
