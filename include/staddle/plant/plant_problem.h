// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "staddle/finance/tax.h"
#include "staddle/growth/equation_set.h"
#include "staddle/optimise/stand_problem.h"
#include "staddle/plant/establishment.h"
#include "staddle/signs/site.h"

namespace staddle {

// Which way to start the next stand is worth most: for each way a the bare-land problem
//   maximise LEV(r; a) over the regimes r of the lattice
// and the ways in the order of what their best regimes are worth.
struct PlantProblem {
  std::vector<EstablishmentAlternative> alternatives;  // names differ
  // The bare-land problem of an alternative. REQUIRES: one that the reader accepted, its
  // responses set to values that the reader allows.
  std::function<StandProblem(const EstablishmentAlternative&)> stand;
  // What the scenario plants without any of them; absent where that is not known.
  std::optional<StandProblem> as_stated;
  SiteFacts site;
  // Growth by equations; absent for a yield table, which has no responses.
  std::optional<EquationSet> equations;
  std::optional<Height> site_index;  // of the site, before any shift
  int regeneration_delay_yr = 1;
  std::optional<TaxRules> tax;  // absent: before tax alone
};

}  // namespace staddle
