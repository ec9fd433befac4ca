// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/exact_limits.h"

#include <algorithm>
#include <cmath>

#include "staddle/base/tolerance.h"

namespace staddle {

ExactLimits::ExactLimits(const CaseKernel& kernel, const LatticeRules& rules)
    : kernel_(kernel),
      rules_(rules),
      cut_limits_{fewest_trees_left, rules.residual_basal_area_floor(), rules.least_tons_cut(),
                  most_rise_of_a_product} {
  const Guards& guards = rules.guards();
  least_diameter_in_ = guards.min_qmd ? guards.min_qmd->in(inches) : -HUGE_VAL;
  least_crown_ratio_ = guards.min_live_crown_ratio ? *guards.min_live_crown_ratio : -HUGE_VAL;
  allowed_.assign(static_cast<std::size_t>(rules.final_to()) + 1, 0);
  for (int at = rules.cut_from(); at <= rules.cut_to(); ++at) {
    const bool tall_enough =
        !guards.min_height || kernel.growth().row(at).height_ft >=
                                  guards.min_height->in(feet) - tolerance::limit_slack;
    if (tall_enough) allowed_[static_cast<std::size_t>(at)] = rules.removals_allowed(at);
  }
}

void ExactLimits::replay(const LatticeRegime& before, int age_yr, StandPoint& point,
                         Measured& measured) const {
  point = kernel_.start();
  Cut cut;
  for (std::size_t i = 0; i < static_cast<std::size_t>(before.cuts); ++i) {
    while (point.age_yr < before.age_yr[i]) kernel_.advance(point, measured);
    kernel_.measure_tons(point, measured);
    kernel_.work_out_cut(point, measured,
                         rules_.removals()[static_cast<std::size_t>(before.removal[i])], cut);
    kernel_.take_cut(point, measured, cut);
    measured.age_yr = -1;
  }
  while (point.age_yr < age_yr) kernel_.advance(point, measured);
  kernel_.measure_tons(point, measured);
}

bool ExactLimits::stand_may_be_cut(const LatticeRegime& before, const Trajectory& stand,
                                   int age_yr) const {
  const auto t = static_cast<std::size_t>(age_yr);
  const double diameter = wide(stand.diameter_in[t]) - least_diameter_in_;
  const double crown = wide(stand.crown_ratio[t]) - least_crown_ratio_;
  if (diameter < -doubt_of_diameter_in || crown < -doubt_of_crown_ratio) return false;
  if (diameter > doubt_of_diameter_in && crown > doubt_of_crown_ratio) return true;
  StandPoint point;
  Measured measured;
  replay(before, age_yr, point, measured);
  return rules_.stand_may_be_cut(measured);
}

bool ExactLimits::cut_may_be_taken(const LatticeRegime& before, int age_yr,
                                   const CutOptions& cuts, std::size_t removal) const {
  if (wide(cuts.margin[removal]) > doubt) return true;
  if (wide(cuts.margin[removal]) < -doubt) return false;
  StandPoint point;
  Measured measured;
  Cut cut;
  replay(before, age_yr, point, measured);
  kernel_.work_out_cut(point, measured, rules_.removals()[removal], cut);
  return rules_.cut_may_be_taken(cut);
}

}  // namespace staddle
