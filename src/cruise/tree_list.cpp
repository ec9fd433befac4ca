// SPDX-License-Identifier: GPL-3.0-or-later
#include "cruise/tree_list.h"

#include <algorithm>

#include "staddle/base/contract.h"

namespace staddle {

TreeList::TreeList(const Tally& tally) {
  require(!tally.plots.empty(), "a tally has a plot");
  find_strata(tally);
  weigh_strata(tally);
  weigh_trees(tally);
}

void TreeList::find_strata(const Tally& tally) {
  for (const Plot& plot : tally.plots) {
    auto found = std::find_if(strata_.begin(), strata_.end(), [&](const StratumSummary& stratum) {
      return stratum.name == plot.stratum;
    });
    if (found == strata_.end()) {
      StratumSummary stratum;
      stratum.name = plot.stratum;
      for (const StratumAcres& known : tally.strata) {
        if (known.name == plot.stratum) stratum.acres = known.acres;
      }
      found = strata_.insert(strata_.end(), stratum);
    }
    ++found->plots;
    stratum_of_plot_.push_back(static_cast<std::size_t>(found - strata_.begin()));
  }
}

void TreeList::weigh_strata(const Tally& tally) {
  const double all_plots = static_cast<double>(tally.plots.size());
  double known_acres = 0.0;
  double left = 1.0;  // of the weight, for the strata whose acres are known
  for (StratumSummary& stratum : strata_) {
    if (stratum.acres) {
      known_acres += stratum.acres->in(acres);
    } else {
      stratum.weight = static_cast<double>(stratum.plots) / all_plots;
      left -= stratum.weight;
      weighed_by_plots_ = weighed_by_plots_ || strata_.size() > 1;
    }
  }
  for (StratumSummary& stratum : strata_) {
    if (stratum.acres) stratum.weight = left * stratum.acres->in(acres) / known_acres;
  }
}

void TreeList::weigh_trees(const Tally& tally) {
  for (std::size_t plot = 0; plot < tally.plots.size(); ++plot) {
    StratumSummary& stratum = strata_[stratum_of_plot_[plot]];
    const double share_of_stratum = 1.0 / static_cast<double>(stratum.plots);
    for (const TallyTree& tree : tally.plots[plot].trees) {
      const double plot_tpa = tally.design.trees_per_tallied_tree(tree.dbh).in(trees_per_acre);
      const BasalArea plot_basal_area = tally.design.basal_area_per_tallied_tree(tree.dbh);
      stratum.mean_basal_area += plot_basal_area * share_of_stratum;
      const double share = stratum.weight * share_of_stratum;
      trees_.push_back({&tree, plot, tree.dbh.in(inches), plot_tpa, share * plot_tpa,
                        share * plot_basal_area.in(square_feet_per_acre)});
    }
  }
}

SampleMean TreeList::mean_of(const std::vector<double>& by_plot) const {
  std::vector<StratumValues> values(strata_.size());
  for (std::size_t h = 0; h < strata_.size(); ++h) values[h].weight = strata_[h].weight;
  for (std::size_t plot = 0; plot < by_plot.size(); ++plot) {
    values[stratum_of_plot_[plot]].values.push_back(by_plot[plot]);
  }
  return sample_mean(values);
}

}  // namespace staddle
