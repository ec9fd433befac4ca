// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/hazard/perils.h"

namespace staddle {

// What the storms of one year meet, at its end and before any cut.
struct Exposure {
  bool timber = true;               // false before a yield table's first row
  Height dominant_height;
  double slenderness = 0.0;         // min(110, 12 H / Dq), floored by recent cuts
  double opening = 0.0;             // g r: how open the recent cuts left the stand
};

// g = max(0, f - 0.15)/0.35 of a cut of this fraction of basal area.
double opening_of_cut(double removal_fraction);
// r = max(0, 1 - tau/recovery), tau = years since the cut, 0 in the first year after.
double remaining_opening(double years_since_cut, double recovery_yr);
// min(110, 12 H / Dq); 110 where the diameter is zero.
double capped_slenderness(double height_ft, double diameter_in);

// Share of the acres that this peril destroys if it strikes.
double damage_share(const Peril& peril, const Exposure& exposure);

}  // namespace staddle
