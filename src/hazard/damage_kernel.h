// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "staddle/hazard/perils.h"

namespace staddle {

// One peril with everything that does not change from year to year worked out.
struct PerilKernel {
  double annual_probability = 0;
  double salvage_share = 0;
  double cleanup_usd_ac = 0;
  bool constant = false;
  double constant_share = 0;
  double base_log_odds = 0;  // logit D0 + species
  double height_slope_per_ft = 0;
  double reference_height_ft = 0;
  double slenderness_slope = 0;  // per unit of slenderness above the threshold
  double log_odds_ratio = 0;
  bool wind = true;
};

PerilKernel make_peril_kernel(const Peril& peril);

inline constexpr double slenderness_threshold = 80.0;
inline constexpr double slenderness_cap = 110.0;

struct ExposureKernel {
  bool timber = true;
  double height_ft = 0;
  double slenderness = 0;
  double opening = 0;
};

inline double damage_share(const PerilKernel& peril, const ExposureKernel& exposure) {
  if (peril.constant) return peril.constant_share;
  if (!exposure.timber) return 0.0;
  // Seedlings are not lost to wind or ice (assumption).
  const double tall_enough = std::clamp((exposure.height_ft - 20.0) / 10.0, 0.0, 1.0);
  if (tall_enough == 0.0) return 0.0;
  const double reach = peril.wind ? std::clamp((exposure.height_ft - 30.0) / 35.0, 0.0, 1.3) : 1.0;
  const double log_odds =
      peril.base_log_odds +
      peril.height_slope_per_ft * (exposure.height_ft - peril.reference_height_ft) +
      peril.slenderness_slope * std::max(0.0, exposure.slenderness - slenderness_threshold) +
      peril.log_odds_ratio * exposure.opening * reach;
  return tall_enough / (1.0 + std::exp(-log_odds));
}

}  // namespace staddle
