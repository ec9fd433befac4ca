// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "cruise/sampling.h"
#include "staddle/cruise/appraisal.h"

namespace staddle {

// A tallied tree and what it stands for. Plain numbers: inches, feet, per acre.
struct WeighedTree {
  const TallyTree* tree = nullptr;
  std::size_t plot = 0;  // in the tally
  double dbh_in = 0.0;
  double plot_tpa = 0.0;           // trees per acre on its plot
  double tpa = 0.0;                // its part of the trees per acre of the whole tract
  double basal_area_ft2_ac = 0.0;  // likewise
};

// All plots of a tally put in order: strata, their weights, and every tree.
class TreeList {
 public:
  // REQUIRES: as appraise().
  explicit TreeList(const Tally& tally);

  const std::vector<WeighedTree>& trees() const { return trees_; }
  const std::vector<StratumSummary>& strata() const { return strata_; }
  // Whether some stratum had to be weighed by its plots.
  bool weighed_by_plots() const { return weighed_by_plots_; }

  // The mean over the tract of a thing whose amount is given for every plot of the tally.
  SampleMean mean_of(const std::vector<double>& by_plot) const;

 private:
  void find_strata(const Tally& tally);
  void weigh_strata(const Tally& tally);
  void weigh_trees(const Tally& tally);

  std::vector<StratumSummary> strata_;
  std::vector<std::size_t> stratum_of_plot_;
  std::vector<WeighedTree> trees_;
  bool weighed_by_plots_ = false;
};

}  // namespace staddle
