// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "staddle/regime/regime.h"
#include "staddle/regime/stand_case.h"

namespace staddle {

// What may become of one acre-sized stand under each of these regimes.
//
// A future is one course of storms over one rotation, from the present (bare land: the
// planting) to the final harvest. In each year at most one peril strikes, peril k with
// its annual probability p_k. It destroys the share D_k of the acres still standing, D_k
// as the hazard has it for the stand of that age, and leaves the rest as it was; hence
// the stand on the acres left is the same in every future, and the acres lost average
// to the evaluator's expected share. An acre
//   lost at age a        yields s_k V - K_k then, V the stumpage value standing;
//   harvested at age T   yields the final harvest, as the evaluator prices it;
// and either way the annual money of the years of waiting, and the land's value once it
// can be planted again. Annual money falls on the acres that entered a year, practices
// and thinnings on those that its storm left.
//   value of a future = money of this rotation, discounted to the present
//                     + sum of v^(t+g) (share that turns bare in t) x land value
// with land value = the regime's own land expectation value on bare land, the case's
// land_value on a standing stand. Then the mean over all futures is the regime's
// expected value: alpha + beta LEV = LEV on bare land, alpha + beta x land value else.
struct FuturesProblem {
  StandCase stand_case;
  // REQUIRES: regimes that evaluate() accepts.
  std::vector<Regime> regimes;
};

}  // namespace staddle
