// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "staddle/tract/pricing.h"
#include "tract/limits.h"
#include "tract/regime_tree.h"
#include "tract/stand_model.h"

namespace staddle {

// A plan's weights as one stand meets them, by year from its present to its last final
// harvest. Years after the plan's end count through the ending value. With the default
// weights this is the stand's own question: discount factors, and the land's value.
struct WeightedYears {
  WeightedYears(const StandModel& model, const CaseKernel& kernel, const Limits& limits,
                const PlanWeights& weights, int last_year);

  double start = 0.0;                               // what is paid at the present
  std::vector<double> income;                       // of a dollar of income
  std::vector<double> cost;                         // of a dollar of cost, positive
  std::vector<double> yearly_before, yearly_after;  // money of the year, by the first cut
  std::vector<double> practices;
  std::vector<double> bare;     // of an acre that turns bare, all that follows
  std::vector<double> harvest;  // of an acre cut, beyond its money and being bare
  std::vector<double> open;
  std::vector<std::vector<double>> tons;  // [measure][year]

 private:
  void weigh_money(const StandModel& model, const PlanWeights& weights, int size, int plan_years);
  double worth_of_bare_acre(const StandModel& model, const Limits& limits,
                            const PlanWeights& weights, int year) const;
};

// Adds up worths along the stretches of one stand, in the order in which they are told.
class WorthWalk {
 public:
  // REQUIRES: `years` outlives the walk.
  WorthWalk(const CaseKernel& kernel, const WeightedYears& years);
  // The worths of the stretch's final harvests, from its final_from_year on; they hold until
  // the next stretch.
  const std::vector<double>& pass(const RegimeStretch& stretch);

 private:
  // At the end of a year, before any cut of it and before its openness.
  struct Ledger {
    double worth = 0.0;
    double alive = 1.0;
  };
  Ledger begin(const RegimeStretch& stretch) const;
  void pass_year(const RegimeStretch& stretch, int year, Ledger& ledger) const;

  const WeightedYears& years_;
  bool first_thinning_past_ = false;
  std::vector<std::vector<Ledger>> levels_;  // by cuts, by year
  std::vector<double> worths_;
};

}  // namespace staddle
