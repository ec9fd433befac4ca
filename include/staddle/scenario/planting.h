// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "staddle/scenario/scenario.h"

namespace staddle {

// How a stand on the bare land of a scenario begins.
struct Planting {
  std::optional<TreeDensity> planted;  // absent: not known, or a table's own
  Height site_index_shift;
  EstablishmentResponse response;
  MoneyPerAcre establishment;
  std::vector<Practice> practices;     // after planting
};

// The alternative that a scenario uses (establishment.use); null where it uses none.
const EstablishmentAlternative* used_alternative(const Scenario& scenario);

// Puts the trees and the costs of the alternative in use into the scenario, so that whoever
// reads them there sees what is planted; a standing stand keeps its own practices. What
// stood there before is kept. Nothing where none is in use, or it was done.
void take_alternative_in_use(Scenario& scenario);

// By this alternative; by null as the rest of the scenario says.
Planting planting_by(const Scenario& scenario, const EstablishmentAlternative* alternative);

// By the alternative in use: what every command plants, on bare land and after a standing
// stand.
Planting planting_of(const Scenario& scenario);

}  // namespace staddle
