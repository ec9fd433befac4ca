// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "staddle/units/age.h"
#include "staddle/units/units.h"

namespace staddle {

// A thinning of trees too small to sell, to give room to the rest.
struct PrecommercialThinning {
  Age at;
  TreeDensity to;  // trees left; where fewer stand, nothing is cut
  friend bool operator==(const PrecommercialThinning&, const PrecommercialThinning&) = default;
};

// What preparing the ground and tending a young stand do to its growth, beside equations
// that know nothing of it.
struct EstablishmentResponse {
  // g: the stand of age A is the equations' stand of age A + g from five years on, and of
  // A (1 + g/5) before. Above -5.
  double years_gained = 0.0;
  // Hardwood basal area as a percentage of that of the pine: basal area is multiplied by
  // exp(coefficient x percent) (equation_set.h).
  double hardwood_percent = 0.0;
  // Leaves the stand on the equations' own basal area for the trees that remain (CI = 0).
  std::optional<PrecommercialThinning> precommercial;

  friend bool operator==(const EstablishmentResponse&, const EstablishmentResponse&) = default;
};

// The age at which years gained have grown in fully. Assumption.
inline constexpr double years_gained_grown_in_yr = 5.0;

// The equations' age of a stand of this age.
double equation_age(double age_yr, double years_gained);

}  // namespace staddle
