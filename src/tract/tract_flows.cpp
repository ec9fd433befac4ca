// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "tract/tract_answer.h"

namespace staddle {
namespace {

// The jobs of one share of a stand: its own regime, then what is planted after it.
class ActionTeller {
 public:
  ActionTeller(const TractProblem& problem, const StandModel& model,
               std::vector<TractAction>& actions)
      : problem_(problem), model_(model), products_(model.reading.products), actions_(actions) {}

  void tell(const RegimeShare& share) {
    acres_ = share.acres;
    successor_ = false;
    if (!model_.standing()) plant(0, 1.0);
    int year = 0;
    double standing = tell_rotation(share.report, 0, 1.0, year);
    while (model_.land.fate == Land::Fate::replanted) {
      successor_ = true;
      const int planted = year + model_.land.delay_yr;
      if (planted > problem_.plan.years) return;
      plant(planted, standing);
      standing = tell_rotation(*model_.rotation, planted, standing, year);
    }
  }

 private:
  // Returns the share that is cut in the end, and sets the year.
  double tell_rotation(const RegimeReport& report, int begins, double share, int& final_year) {
    const Age present = report.years.front().at;
    const auto year_of = [&](Age age) { return begins + age.whole() - present.whole(); };
    for (const ThinningRecord& cut : report.thinnings) {
      if (cut.cuts_nothing) continue;
      add(TractAction::Kind::thinning, year_of(cut.at), share * cut.share_standing, cut.tons,
          cut.revenue, cut.removal_fraction);
    }
    const HarvestRecord& harvest = report.final_harvest;
    final_year = year_of(report.final_harvest_age);
    add(TractAction::Kind::final_harvest, final_year, share * harvest.share_standing, harvest.tons,
        harvest.revenue, 0.0);
    return share * harvest.share_standing;
  }

  const Costs& costs_of_planting() const {
    return successor_ && model_.standing()
               ? problem_.stands[model_.place].successor->stand_case.costs
               : model_.problem.stand_case.costs;
  }

  void plant(int year, double share) {
    add(TractAction::Kind::planting, year, share, {}, -costs_of_planting().establishment, 0.0);
  }

  void add(TractAction::Kind kind, int year, double share, const std::vector<Yield>& tons_cut,
           MoneyPerAcre money, double removal_fraction) {
    if (year > problem_.plan.years) return;
    TractAction action;
    action.year = year;
    action.stand = model_.place;
    action.kind = kind;
    action.successor = successor_;
    action.acres = acres_ * share;
    action.removal_fraction = removal_fraction;
    if (kind != TractAction::Kind::planting) action.tons.assign(products_, Weight());
    for (std::size_t i = 0; i < tons_cut.size(); ++i) {
      action.tons[model_.reading.product_of[i]] += tons_cut[i] * action.acres;
    }
    action.money = money * action.acres;
    actions_.push_back(std::move(action));
  }

  const TractProblem& problem_;
  const StandModel& model_;
  std::size_t products_;
  Area acres_;
  bool successor_ = false;
  std::vector<TractAction>& actions_;
};

void add_to(TractPeriod& period, const AcreFlows& flows, std::size_t year, Area area) {
  period.income += dollars_per_acre(flows.income[year]) * area;
  period.cost += dollars_per_acre(flows.cost[year]) * area;
  period.establishment += dollars_per_acre(flows.establishment[year]) * area;
  period.final_harvest_acres += area * flows.final_harvest[year];
  period.open_acres += area * flows.open[year];
  for (std::size_t i = 0; i < period.tons.size(); ++i) {
    period.tons[i] += tons_per_acre(flows.tons[i][year]) * area;
  }
}

void add_to(TractPeriod& period, const TractPeriod& year, bool first) {
  period.income += year.income;
  period.cost += year.cost;
  period.establishment += year.establishment;
  period.final_harvest_acres += year.final_harvest_acres;
  period.open_acres = first ? year.open_acres : std::min(period.open_acres, year.open_acres);
  for (std::size_t i = 0; i < period.tons.size(); ++i) period.tons[i] += year.tons[i];
}

}  // namespace

void tell_flows(const TractProblem& problem, const std::vector<StandModel>& models,
                TractSolution& solution) {
  const TractPlan& plan = problem.plan;
  const std::size_t products = solution.products.size();
  const auto blank = [&](int from, int to) {
    TractPeriod period;
    period.from_year = from;
    period.to_year = to;
    period.tons.assign(products, Weight());
    return period;
  };
  for (int year = 0; year <= plan.years; ++year) solution.years.push_back(blank(year, year));
  for (std::size_t s = 0; s < models.size(); ++s) {
    const StandModel& model = models[s];
    ActionTeller teller(problem, model, solution.actions);
    for (const RegimeShare& share : solution.stands[model.place].regimes) {
      const AcreFlows flows = model.flows_of(share.report, plan.years);
      for (std::size_t year = 0; year < solution.years.size(); ++year) {
        add_to(solution.years[year], flows, year, share.acres);
      }
      teller.tell(share);
    }
  }
  std::stable_sort(solution.actions.begin(), solution.actions.end(),
                   [](const TractAction& a, const TractAction& b) {
                     return a.year != b.year ? a.year < b.year : a.stand < b.stand;
                   });
  for (int p = 1; p <= plan.periods(); ++p) {
    const int first = (p - 1) * plan.period_yr + 1;
    TractPeriod period = blank(first, p * plan.period_yr);
    // The present year counts in the first period; openness only from year 1 on.
    if (p == 1) add_to(period, solution.years.front(), true);
    for (int year = first; year <= period.to_year; ++year) {
      add_to(period, solution.years[static_cast<std::size_t>(year)], year == first);
    }
    solution.periods.push_back(std::move(period));
  }
}

}  // namespace staddle
