// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/hazard/damage.h"

#include <cmath>

#include "hazard/damage_kernel.h"
#include "stand/stand_constants.h"

namespace staddle {

PerilKernel make_peril_kernel(const Peril& peril) {
  PerilKernel kernel;
  kernel.annual_probability = peril.annual_probability;
  kernel.salvage_share = peril.salvage_share;
  kernel.cleanup_usd_ac = peril.cleanup.in(dollars_per_acre);
  kernel.constant = !peril.logistic.has_value();
  kernel.constant_share = peril.constant_share;
  if (peril.logistic) {
    const LogisticShare& share = *peril.logistic;
    kernel.base_log_odds = std::log(share.base_damage_share / (1.0 - share.base_damage_share)) +
                           share.species_log_odds;
    kernel.height_slope_per_ft = share.height_slope_per_10ft / 10.0;
    kernel.reference_height_ft = share.reference_height.in(feet);
    kernel.slenderness_slope = share.slenderness_slope_per_10 / 10.0;
    kernel.log_odds_ratio = std::log(share.thinning_odds_ratio);
    kernel.wind = share.wind;
  }
  return kernel;
}

double opening_of_cut(double removal_fraction) {
  return std::max(0.0, removal_fraction - 0.15) / 0.35;
}

double remaining_opening(double years_since_cut, double recovery_yr) {
  return std::max(0.0, 1.0 - years_since_cut / recovery_yr);
}

double capped_slenderness(double height_ft, double diameter_in) {
  if (diameter_in <= 0.0) return slenderness_cap;
  return std::min(slenderness_cap, inches_per_foot * height_ft / diameter_in);
}

double damage_share(const Peril& peril, const Exposure& exposure) {
  return damage_share(make_peril_kernel(peril),
                      ExposureKernel{exposure.timber, exposure.dominant_height.in(feet),
                                     exposure.slenderness, exposure.opening});
}

Hazard with_odds_ratio(Hazard hazard, double odds_ratio) {
  for (Peril& peril : hazard.perils) {
    if (peril.logistic) peril.logistic->thinning_odds_ratio = odds_ratio;
  }
  return hazard;
}

}  // namespace staddle
