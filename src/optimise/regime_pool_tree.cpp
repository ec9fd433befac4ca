// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/regime_pool_tree.h"

#include <algorithm>

namespace staddle {
namespace {

class TreeGrower {
 public:
  TreeGrower(const CaseKernel& kernel, const LatticeRules& rules) : kernel_(kernel), rules_(rules) {
    tree_.products = kernel.products();
    tree_.storms = kernel.hazard_active();
    tree_.row_width = tree_.products + (tree_.storms ? 3 : 0);
    tree_.final_to_yr = rules.final_to();
  }

  PoolTree grow() {
    follow(kernel_.start(), 0);
    return std::move(tree_);
  }

 private:
  // As in the exhaustive search, but with tons written down instead of values.
  void follow(StandPoint point, std::size_t cut_tons) {
    Measured measured;
    PoolStretch stretch;
    stretch.regime = regime_;
    stretch.from_yr = point.age_yr;
    stretch.final_from_yr = std::max(rules_.next_final_from(point), point.age_yr);
    stretch.first_row_yr = tree_.storms ? point.age_yr + (point.entries > 0 ? 1 : 0)
                                        : stretch.final_from_yr;
    stretch.first_row = tree_.rows.size() / tree_.row_width;
    stretch.cut_tons = cut_tons;
    tree_.stretches.push_back(stretch);
    tree_.regimes += static_cast<std::size_t>(
        std::max(0, tree_.final_to_yr - stretch.final_from_yr + 1));
    const std::vector<StandPoint> cut_here = write_rows(point, measured, stretch);
    // The rows of one stretch lie together, so what follows a cut comes after them.
    for (const StandPoint& at : cut_here) try_cuts(at);
  }

  // Writes the rows and returns the points at which the stand may be cut.
  std::vector<StandPoint> write_rows(StandPoint& point, Measured& measured,
                                     const PoolStretch& stretch) {
    const int cut_from = rules_.next_cut_from(point);
    const bool may_cut_again = point.entries < rules_.max_thinnings();
    std::vector<StandPoint> cut_here;
    while (true) {
      if (point.age_yr >= stretch.first_row_yr) write_row(point, measured, stretch);
      if (may_cut_again && point.age_yr >= cut_from && point.age_yr <= rules_.cut_to()) {
        cut_here.push_back(point);
      }
      if (point.age_yr >= rules_.final_to()) return cut_here;
      kernel_.advance(point, measured);
    }
  }

  void write_row(const StandPoint& point, Measured& measured, const PoolStretch& stretch) {
    kernel_.measure_tons(point, measured);
    tree_.rows.insert(tree_.rows.end(), measured.tons.begin(),
                      measured.tons.begin() + static_cast<std::ptrdiff_t>(tree_.products));
    if (!tree_.storms) return;
    if (point.age_yr == stretch.from_yr) {  // the present: its storms are past
      tree_.rows.insert(tree_.rows.end(), {0.0, 0.0, 0.0});
      return;
    }
    const StormYear year = kernel_.storm(kernel_.exposure(point, measured), 1.0);
    tree_.rows.insert(tree_.rows.end(),
                      {year.loss_share, year.salvage_usd_ac, year.cleanup_usd_ac});
  }

  void try_cuts(const StandPoint& point) {
    Measured measured;
    kernel_.measure_tons(point, measured);
    if (!rules_.stand_may_be_cut(measured)) return;
    const std::size_t allowed = rules_.removals_allowed(point.age_yr);
    const auto entry = static_cast<std::size_t>(regime_.cuts);
    Cut cut;
    for (std::size_t i = 0; i < allowed; ++i) {
      if (!rules_.leaves_trees(rules_.removals()[i], point.entries)) continue;
      kernel_.work_out_cut(point, measured, rules_.removals()[i], cut);
      if (!rules_.cut_may_be_taken(cut)) continue;
      StandPoint child = point;
      kernel_.take_cut(child, measured, cut);
      const std::size_t place = tree_.cut_tons.size();
      tree_.cut_tons.insert(tree_.cut_tons.end(), cut.tons.begin(),
                            cut.tons.begin() + static_cast<std::ptrdiff_t>(tree_.products));
      regime_.age_yr[entry] = point.age_yr;
      regime_.removal[entry] = static_cast<int>(i);
      ++regime_.cuts;
      follow(child, place);
      --regime_.cuts;
    }
  }

  const CaseKernel& kernel_;
  const LatticeRules& rules_;
  LatticeRegime regime_;
  PoolTree tree_;
};

}  // namespace

PoolTree grow_pool_tree(const CaseKernel& kernel, const LatticeRules& rules) {
  return TreeGrower(kernel, rules).grow();
}

}  // namespace staddle
