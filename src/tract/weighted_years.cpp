// SPDX-License-Identifier: GPL-3.0-or-later
#include "tract/weighted_years.h"

#include <algorithm>

namespace staddle {
WeightedYears::WeightedYears(const StandModel& model, const CaseKernel& kernel,
                             const Limits& limits, const PlanWeights& weights, int last_year) {
  const int present = kernel.present_yr();
  weigh_money(model, weights, last_year + model.land.delay_yr + 1, limits.plan_years);
  const auto in_plan = [&](const std::vector<double>& by_plan_year) {
    std::vector<double> result(nth(last_year + 1), 0.0);
    std::copy_n(by_plan_year.begin(), std::min(by_plan_year.size(), result.size()), result.begin());
    return result;
  };
  harvest = in_plan(weights.final_harvest_acres);
  open = in_plan(weights.open_acres);
  for (const std::vector<double>& measure : weights.tons) tons.push_back(in_plan(measure));
  for (int year = 0; year <= last_year; ++year) {
    const auto yearly = [&](bool past) {
      const double paid = kernel.yearly_cost(present + year, past);
      return (kernel.yearly_money(present + year, past) + paid) * income[nth(year)] -
             paid * cost[nth(year)];
    };
    yearly_before.push_back(year == 0 ? 0.0 : yearly(false));
    yearly_after.push_back(year == 0 ? 0.0 : yearly(true));
    practices.push_back(cost[nth(year)] * kernel.practice_money(present + year));
    bare.push_back(worth_of_bare_acre(model, limits, weights, year));
  }
  if (model.standing()) return;
  const double planting = model.problem.stand_case.costs.establishment.in(dollars_per_acre);
  start = practices.front() + planting * (weights.establishment.front() - cost.front());
}

void WeightedYears::weigh_money(const StandModel& model, const PlanWeights& weights, int size,
                                int plan_years) {
  for (int year = 0; year < size; ++year) {
    const double now = weights.present_value * model.land.discount(year);
    if (year <= plan_years) {
      income.push_back(now + weights.income[nth(year)]);
      cost.push_back(now - weights.cost[nth(year)]);
    } else {
      const double later = now + weights.ending_value * model.land.discount(year - plan_years);
      income.push_back(later);
      cost.push_back(later);
    }
  }
}

double WeightedYears::worth_of_bare_acre(const StandModel& model, const Limits& limits,
                                         const PlanWeights& weights, int year) const {
  const Land& land = model.land;
  const Costs& costs = model.problem.stand_case.costs;
  const int planted = year + land.delay_yr;
  double worth = weights.present_value * land.discount(planted) * land.value +
                 weights.ending_value * land.ending_value(limits.plan_years, year);
  for (int wait = year + 1; wait <= planted; ++wait) {
    worth += income[nth(wait)] * costs.annual_income.in(dollars_per_acre)-cost[nth(wait)] *
             costs.annual_cost.in(dollars_per_acre);
  }
  for (int t = year; t <= limits.plan_years; ++t) {
    const double weight = weights.open_acres[nth(t)];
    if (weight != 0.0) worth += weight * land.open_in(t, year);
  }
  if (land.fate != Land::Fate::replanted) return worth;
  for (int t = planted; t <= limits.plan_years; ++t) {
    const std::size_t from = nth(t - planted);
    worth += weights.income[nth(t)] * land.flows.income[from] +
             weights.cost[nth(t)] * land.flows.cost[from] +
             weights.establishment[nth(t)] * land.flows.establishment[from] +
             weights.final_harvest_acres[nth(t)] * land.flows.final_harvest[from];
    for (std::size_t i = 0; i < weights.tons.size(); ++i) {
      for (const std::size_t product : limits.tons[i].products) {
        worth += weights.tons[i][nth(t)] * land.flows.tons[product][from];
      }
    }
  }
  return worth;
}

WorthWalk::WorthWalk(const CaseKernel& kernel, const WeightedYears& years)
    : years_(years),
      first_thinning_past_(kernel.start().first_thinning_past),
      levels_(LatticeRegime::most_cuts + 1, std::vector<Ledger>(years.harvest.size())) {}

WorthWalk::Ledger WorthWalk::begin(const RegimeStretch& stretch) const {
  if (stretch.regime.cuts == 0) return {years_.start, 1.0};
  const std::size_t year = nth(stretch.from_year);
  Ledger ledger = levels_[nth(stretch.regime.cuts - 1)][year];
  double sale = years_.income[year] * stretch.cut[0];
  for (std::size_t i = 0; i < years_.tons.size(); ++i) {
    sale += years_.tons[i][year] * stretch.cut[1 + i];
  }
  ledger.worth += ledger.alive * sale;
  return ledger;
}

// One year on from the end of the year before.
void WorthWalk::pass_year(const RegimeStretch& stretch, int year, Ledger& ledger) const {
  const std::size_t t = nth(year);
  const bool past = first_thinning_past_ || stretch.regime.cuts > 0;
  if (stretch.open != nullptr && stretch.open[year - 1 - stretch.from_year] != 0) {
    ledger.worth += ledger.alive * years_.open[t - 1];
  }
  ledger.worth += ledger.alive * (past ? years_.yearly_after[t] : years_.yearly_before[t]);
  if (stretch.storms != nullptr) {
    const double* storm = stretch.storms + 3 * (year - stretch.from_year);
    ledger.worth += ledger.alive * (storm[1] * years_.income[t] - storm[2] * years_.cost[t] +
                                    storm[0] * years_.bare[t]);
    ledger.alive *= 1.0 - storm[0];
  }
  ledger.worth += ledger.alive * years_.practices[t];
}

const std::vector<double>& WorthWalk::pass(const RegimeStretch& stretch) {
  worths_.clear();
  Ledger ledger = begin(stretch);
  std::vector<Ledger>& level = levels_[nth(stretch.regime.cuts)];
  const std::size_t width = 1 + years_.tons.size();
  const double* row = stretch.harvests;
  for (int year = stretch.from_year;; ++year) {
    if (year > stretch.from_year) pass_year(stretch, year, ledger);
    const std::size_t t = nth(year);
    level[t] = ledger;
    if (year >= stretch.final_from_year) {
      double sale = years_.income[t] * row[0] + years_.harvest[t] + years_.bare[t];
      for (std::size_t i = 1; i < width; ++i) sale += years_.tons[i - 1][t] * row[i];
      worths_.push_back(ledger.worth + ledger.alive * sale);
      row += width;
    }
    if (year >= stretch.to_year) return worths_;
  }
}

}  // namespace staddle
