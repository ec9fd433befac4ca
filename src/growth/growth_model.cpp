// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/growth/growth_model.h"

#include "growth/growth_kernel.h"
#include "staddle/base/contract.h"

namespace staddle {
namespace {

const AgeRow& known_row(const GrowthKernel& kernel, Age at) {
  require(at.in(years) == at.whole(), "growth is asked for at whole ages");
  require(at.whole() >= kernel.first_age() && at.whole() <= kernel.last_age(),
          "growth is asked for within the model's ages");
  return kernel.row(at.whole());
}

}  // namespace

GrowthModel GrowthModel::from_equations(const EquationSet& equations, Height site_index,
                                        TreeDensity planted,
                                        const EstablishmentResponse& response) {
  return GrowthModel(std::make_shared<const GrowthKernel>(equations, site_index.in(feet),
                                                          planted.in(trees_per_acre), response));
}

GrowthModel GrowthModel::from_table(const YieldTable& table) {
  return GrowthModel(std::make_shared<const GrowthKernel>(table));
}

GrowthModel GrowthModel::from_tabled_regime(const TabledRegime& regime) {
  return GrowthModel(std::make_shared<const GrowthKernel>(regime));
}

Age GrowthModel::first_age() const { return age(kernel_->first_age()); }
Age GrowthModel::last_age() const { return age(kernel_->last_age()); }

Height GrowthModel::dominant_height(Age at) const {
  return feet(known_row(*kernel_, at).height_ft);
}

TreeDensity GrowthModel::surviving_trees(TreeDensity alive, Age from, Age to) const {
  known_row(*kernel_, from);
  known_row(*kernel_, to);
  require(from <= to, "survival runs forward");
  const TreeTrack track = kernel_->track(alive.in(trees_per_acre), from.whole());
  return trees_per_acre(kernel_->trees_at(track, to.whole()));
}

BasalArea GrowthModel::unthinned_basal_area(Age at, TreeDensity trees) const {
  const AgeRow& row = known_row(*kernel_, at);
  const double tpa = trees.in(trees_per_acre);
  if (!row.timber || tpa <= 0.0) return square_feet_per_acre(0);
  return square_feet_per_acre(std::exp(kernel_->log_unthinned_basal_area(row, std::log(tpa))));
}

double GrowthModel::live_crown_ratio(Age at, TreeDensity trees, BasalArea basal_area) const {
  const AgeRow& row = known_row(*kernel_, at);
  if (row.height_ft <= 0.0) return 1.0;
  const Diameter diameter = quadratic_mean_diameter(trees, basal_area);
  return 1.0 - std::exp(row.crown_slope * diameter.in(inches) / row.height_ft);
}

TreeDensity GrowthModel::planted_stand_trees(Age at) const {
  known_row(*kernel_, at);
  return trees_per_acre(kernel_->trees_at(kernel_->planted_track(), at.whole()));
}

BasalArea GrowthModel::planted_stand_basal_area(Age at) const {
  return unthinned_basal_area(at, planted_stand_trees(at));
}

}  // namespace staddle
