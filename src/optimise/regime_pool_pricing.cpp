// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/regime_pool_pricing.h"

namespace staddle {
namespace {

// The state of the money at the end of a year, before any cut of it.
struct Ledger {
  PoolCoefficients sums;
  double alive = 1;
};

class TreePricer {
 public:
  TreePricer(const PoolTree& tree, const CaseKernel& kernel, const PoolListener& listener)
      : tree_(tree), kernel_(kernel), listener_(listener) {
    const auto years =
        static_cast<std::size_t>(tree.final_to_yr - kernel.present_yr() + 1);
    levels_.assign(LatticeRegime::most_cuts + 1, std::vector<Ledger>(years));
  }

  void price() {
    for (std::size_t i = 0; i < tree_.stretches.size(); ++i) run_through(i);
  }

 private:
  Ledger& at(int cuts, int age_yr) {
    return levels_[static_cast<std::size_t>(cuts)]
                  [static_cast<std::size_t>(age_yr - kernel_.present_yr())];
  }

  Ledger begin(const PoolStretch& stretch) {
    Ledger ledger;
    if (stretch.regime.cuts == 0) {
      ledger.sums.money = kernel_.start().money;
      return ledger;
    }
    ledger = at(stretch.regime.cuts - 1, stretch.from_yr);
    const double now = kernel_.discount(stretch.from_yr) * ledger.alive;
    for (std::size_t i = 0; i < tree_.products; ++i) {
      ledger.sums.thinning[i] += now * kernel_.net_share() * tree_.cut_tons[stretch.cut_tons + i];
    }
    ledger.sums.money -= now * kernel_.thinning_sale_cost();
    return ledger;
  }

  void run_through(std::size_t place) {
    const PoolStretch& stretch = tree_.stretches[place];
    const bool past = stretch.regime.cuts > 0 || kernel_.start().first_thinning_past;
    Ledger ledger = begin(stretch);
    for (int at_yr = stretch.from_yr;; ++at_yr) {
      if (at_yr > stretch.from_yr) pass_year(stretch, at_yr, past, ledger);
      at(stretch.regime.cuts, at_yr) = ledger;
      if (at_yr >= stretch.final_from_yr) tell_harvest(place, at_yr, ledger);
      if (at_yr >= tree_.final_to_yr) return;
    }
  }

  void pass_year(const PoolStretch& stretch, int at_yr, bool past, Ledger& ledger) {
    const double now = kernel_.discount(at_yr) * ledger.alive;
    double loss = 0.0;
    if (tree_.storms) {
      const double* row = tree_.row(stretch, at_yr);
      const double* storm = row + tree_.products;
      loss = storm[0];
      for (std::size_t i = 0; i < tree_.products; ++i) {
        ledger.sums.final[i] += now * storm[1] * row[i];
      }
      ledger.sums.money += now * (storm[1] * kernel_.other_timber_value(at_yr) - storm[2] +
                                  loss * kernel_.delay_money());
      ledger.sums.land_weight += kernel_.land_discount(at_yr) * ledger.alive * loss;
    }
    ledger.sums.money += now * kernel_.yearly_money(at_yr, past);
    ledger.alive *= 1.0 - loss;
    ledger.sums.money += kernel_.discount(at_yr) * ledger.alive * kernel_.practice_money(at_yr);
  }

  void tell_harvest(std::size_t place, int at_yr, const Ledger& ledger) {
    const double* row = tree_.row(tree_.stretches[place], at_yr);
    const double now = kernel_.discount(at_yr) * ledger.alive;
    PoolCoefficients sums = ledger.sums;
    for (std::size_t i = 0; i < tree_.products; ++i) {
      sums.final[i] += now * kernel_.net_share() * row[i];
    }
    sums.money += now * (kernel_.other_timber_value(at_yr) * kernel_.net_share() -
                         kernel_.final_sale_cost() + kernel_.delay_money());
    sums.land_weight += kernel_.land_discount(at_yr) * ledger.alive;
    listener_(sums, place, at_yr);
  }

  const PoolTree& tree_;
  const CaseKernel& kernel_;
  const PoolListener& listener_;
  std::vector<std::vector<Ledger>> levels_;  // by cuts, by age
};

}  // namespace

void price_tree(const PoolTree& tree, const CaseKernel& kernel, const PoolListener& listener) {
  TreePricer(tree, kernel, listener).price();
}

}  // namespace staddle
