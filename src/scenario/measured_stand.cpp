// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/scenario/measured_stand.h"

#include <algorithm>
#include <cmath>

#include "staddle/base/contract.h"

namespace staddle {

GrowthModel growth_model_of(const StandBlock& block) {
  if (const auto* table = std::get_if<YieldTable>(&block.source)) {
    return GrowthModel::from_table(*table);
  }
  const auto* equations = std::get_if<EquationSet>(&block.source);
  require(equations && block.site_index,
          "growth_model_of needs equations with a site index, or one yield table");
  require(block.planted || block.standing, "bare land on equations is planted with so many trees");
  const TreeDensity planted = block.planted ? *block.planted : block.standing->trees;
  return GrowthModel::from_equations(*equations, *block.site_index, planted);
}

double recovery_per_yr(const GrowthSource& source) {
  if (const auto* equations = std::get_if<EquationSet>(&source)) return equations->recovery_per_yr;
  const auto* table = std::get_if<YieldTable>(&source);
  require(table != nullptr, "tabled regimes do not recover: they are what they are");
  return table->options.recovery_per_yr;
}

MeasuredStand grown_unthinned(const MeasuredStand& stand, const GrowthModel& growth,
                              double recovery_per_yr, Years time) {
  const Age now = stand.at;
  const Age then = now + time;
  MeasuredStand later = stand;
  later.at = then;
  later.trees = growth.surviving_trees(stand.trees, now, then);
  const double competition = 1.0 - stand.basal_area / growth.unthinned_basal_area(now, stand.trees);
  later.basal_area = growth.unthinned_basal_area(then, later.trees) *
                     (1.0 - competition * std::exp(-recovery_per_yr * time.in(years)));
  if (stand.live_crown_ratio) {
    const double offset =
        *stand.live_crown_ratio - growth.live_crown_ratio(now, stand.trees, stand.basal_area);
    later.live_crown_ratio =
        std::clamp(growth.live_crown_ratio(then, later.trees, later.basal_area) + offset, 0.0, 1.0);
  }
  for (OtherTimber& timber : later.other_timber) {
    timber.now = timber.now * std::pow(1.0 + timber.growth_fraction_per_yr, time.in(years));
  }
  return later;
}

}  // namespace staddle
