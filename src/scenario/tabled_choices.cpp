// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/scenario/tabled_choices.h"

#include "staddle/base/contract.h"

namespace staddle {
namespace {

std::vector<TabledCut> cuts_of(const TabledRegime& regime) {
  std::vector<TabledCut> cuts;
  for (const TabledThinning& thinning : regime.thinnings) {
    TabledCut cut{age(thinning.age_yr), {}, {}, {}};
    for (const double cut_tons : thinning.tons_ac) cut.tons.push_back(tons_per_acre(cut_tons));
    for (std::size_t row = 0; row < regime.table.age_yr.size(); ++row) {
      if (regime.table.age_yr[row] != thinning.age_yr) continue;
      cut.trees_left = trees_per_acre(regime.table.tpa[row]);
      cut.basal_area_left = square_feet_per_acre(regime.table.basal_area_ft2_ac[row]);
    }
    cuts.push_back(std::move(cut));
  }
  return cuts;
}

std::vector<Age> final_ages_of(const TabledRegime& regime, const DecisionLattice& lattice) {
  const int last_thinning = regime.thinnings.empty() ? 0 : regime.thinnings.back().age_yr;
  std::vector<Age> ages;
  for (const int row_age : regime.table.age_yr) {
    const Age at = age(row_age);
    if (row_age <= last_thinning || row_age == 0) continue;
    if (at < lattice.final_from || at > lattice.final_to) continue;
    ages.push_back(at);
  }
  return ages;
}

}  // namespace

std::vector<TabledChoice> make_tabled_choices(const Scenario& scenario) {
  const auto* regimes = std::get_if<std::vector<TabledRegime>>(&scenario.stand.source);
  require(regimes != nullptr, "tabled choices come from a list of tabled regimes");
  std::vector<TabledChoice> choices;
  for (const TabledRegime& regime : *regimes) {
    StandCase stand{.growth = GrowthModel::from_tabled_regime(regime),
                    .assortment = Assortment::from_tabled_regime(regime),
                    .prices = scenario.prices,
                    .costs = scenario.costs,
                    .hazard = scenario.hazard,
                    .standing = std::nullopt,
                    .tabled_cuts = cuts_of(regime)};
    choices.push_back({regime.name,
                       {std::move(stand), scenario.lattice, scenario.area},
                       final_ages_of(regime, scenario.lattice)});
  }
  return choices;
}

}  // namespace staddle
