// SPDX-License-Identifier: GPL-3.0-or-later
#include "tract/limits.h"

#include <algorithm>
#include <numeric>
#include <set>

namespace staddle {
namespace {

using Measure = LimitRow::Measure;

class Builder {
 public:
  Builder(const TractProblem& problem, double starting_value)
      : problem_(problem), plan_(problem.plan), starting_value_(starting_value) {
    limits_.plan_years = plan_.years;
  }

  Limits build() {
    add_income();
    add_harvest_acres();
    for (const TonsLimit& limit : plan_.tons) add_tons(limit);
    if (plan_.open_stand) add_open(*plan_.open_stand);
    if (plan_.ending_value_min_fraction) add_ending(*plan_.ending_value_min_fraction);
    if (plan_.establishment_max_per_period) {
      for (int p = 1; p <= plan_.periods(); ++p) {
        LimitRow row = row_of(Measure::establishment, "establishment_usd_max_per_period", p);
        row.is_floor = false;
        row.bound = plan_.establishment_max_per_period->in(dollars);
        limits_.rows.push_back(row);
      }
    }
    return std::move(limits_);
  }

 private:
  // The present year counts in the first period.
  int first_of(int period) const { return period == 1 ? 0 : (period - 1) * plan_.period_yr + 1; }
  int last_of(int period) const { return period * plan_.period_yr; }

  LimitRow row_of(Measure measure, const std::string& limit, int period) const {
    LimitRow row;
    row.measure = measure;
    row.limit = limit;
    row.period = period;
    row.from_year = (period - 1) * plan_.period_yr + 1;
    row.to_year = last_of(period);
    row.first_year = first_of(period);
    row.by_year.assign(static_cast<std::size_t>(row.to_year - row.first_year + 1), 1.0);
    return row;
  }

  // This period's amount less `share` of the last one's, against zero.
  LimitRow against_last(Measure measure, const std::string& limit, int period, double share) const {
    LimitRow row = row_of(measure, limit, period);
    row.is_relative = true;
    row.first_year = first_of(period - 1);
    const auto before = static_cast<std::size_t>(last_of(period - 1) - row.first_year + 1);
    row.by_year.insert(row.by_year.begin(), before, -share);
    return row;
  }

  void add_income() {
    for (const IncomeFloor& floor : plan_.income_floors) {
      for (int p = 1; p <= plan_.periods(); ++p) {
        LimitRow row = row_of(Measure::income, "income_floor_usd", p);
        const int covered =
            std::min(row.to_year, floor.to_year) - std::max(row.from_year, floor.from_year) + 1;
        if (covered < 1) continue;
        row.bound = covered * floor.per_year.in(dollars);
        limits_.rows.push_back(row);
      }
    }
    if (!plan_.income_max_drop_fraction) return;
    for (int p = 2; p <= plan_.periods(); ++p) {
      limits_.rows.push_back(against_last(Measure::income, "income_max_drop_fraction", p,
                                          1.0 - *plan_.income_max_drop_fraction));
    }
  }

  void add_harvest_acres() {
    const auto add = [&](const std::string& limit, const std::string& group, Area most) {
      for (int p = 1; p <= plan_.periods(); ++p) {
        LimitRow row = row_of(Measure::final_harvest, limit, p);
        row.of = row.group = group;
        row.is_floor = false;
        row.bound = most.in(acres);
        limits_.rows.push_back(row);
      }
    };
    if (plan_.final_harvest_acres_max_per_period) {
      add("final_harvest_acres_max_per_period", "", *plan_.final_harvest_acres_max_per_period);
    }
    if (!plan_.group_final_harvest_acres_max_per_period) return;
    std::set<std::string> groups;
    for (const TractStand& stand : problem_.stands) {
      if (!stand.group.empty()) groups.insert(stand.group);
    }
    for (const std::string& group : groups) {
      add("group_final_harvest_acres_max_per_period", group,
          *plan_.group_final_harvest_acres_max_per_period);
    }
  }

  std::size_t tons_measure(const std::string& product) {
    const auto found =
        std::find_if(limits_.tons.begin(), limits_.tons.end(),
                     [&](const TonsMeasure& measure) { return measure.product == product; });
    if (found != limits_.tons.end()) return static_cast<std::size_t>(found - limits_.tons.begin());
    const std::vector<std::string> names = product_names(problem_);
    TonsMeasure measure{product, {}};
    for (std::size_t i = 0; i < names.size(); ++i) {
      if (product == "all" || names[i] == product) measure.products.push_back(i);
    }
    limits_.tons.push_back(measure);
    return limits_.tons.size() - 1;
  }

  void add_tons(const TonsLimit& limit) {
    const std::size_t measure = tons_measure(limit.product);
    const auto add = [&](LimitRow row, bool is_floor, double bound) {
      row.of = limit.product;
      row.tons = measure;
      row.is_floor = is_floor;
      row.bound = bound;
      limits_.rows.push_back(row);
    };
    for (int p = 1; p <= plan_.periods(); ++p) {
      if (limit.min_per_period) {
        add(row_of(Measure::tons, "tons/min_per_period", p), true, limit.min_per_period->in(tons));
      }
      if (limit.max_per_period) {
        add(row_of(Measure::tons, "tons/max_per_period", p), false, limit.max_per_period->in(tons));
      }
      if (!limit.max_change_fraction || p == 1) continue;
      const double change = *limit.max_change_fraction;
      const std::string key = "tons/max_change_fraction";
      add(against_last(Measure::tons, key, p, 1.0 - change), true, 0.0);
      add(against_last(Measure::tons, key, p, 1.0 + change), false, 0.0);
    }
  }

  void add_open(const OpenStand& open) {
    for (int year = open.from_year; year <= plan_.years; ++year) {
      LimitRow row =
          row_of(Measure::open, "open_stand/acres_min", (year - 1) / plan_.period_yr + 1);
      row.from_year = row.to_year = row.first_year = year;
      row.by_year = {1.0};
      row.bound = open.acres_min.in(acres);
      limits_.rows.push_back(row);
    }
  }

  void add_ending(double share) {
    LimitRow row;
    row.measure = Measure::ending_value;
    row.limit = "ending_value_min_fraction";
    row.from_year = 1;
    row.to_year = plan_.years;
    row.by_year = {1.0};
    row.bound = share * starting_value_;
    limits_.rows.push_back(row);
  }

  const TractProblem& problem_;
  const TractPlan& plan_;
  double starting_value_;
  Limits limits_;
};

}  // namespace

bool Limits::need_open() const {
  return std::any_of(rows.begin(), rows.end(),
                     [](const LimitRow& row) { return row.measure == LimitRow::Measure::open; });
}

Limits limits_of(const TractProblem& problem, double starting_value) {
  return Builder(problem, starting_value).build();
}

double use_of(const LimitRow& row, const Limits& limits, const AcreFlows& flows) {
  const auto over_years = [&](const std::vector<double>& measure) {
    const auto from = measure.begin() + row.first_year;
    return std::inner_product(row.by_year.begin(), row.by_year.end(), from, 0.0);
  };
  switch (row.measure) {
    case Measure::income:
      return over_years(flows.income);
    case Measure::establishment:
      return over_years(flows.establishment);
    case Measure::final_harvest:
      return over_years(flows.final_harvest);
    case Measure::open:
      return over_years(flows.open);
    case Measure::tons: {
      double sum = 0.0;
      for (const std::size_t product : limits.tons[row.tons].products) {
        sum += over_years(flows.tons[product]);
      }
      return sum;
    }
    case Measure::ending_value:
      return row.by_year.front() * flows.ending_value;
  }
  return 0.0;
}

PlanWeights plain_weights(const Limits& limits, double present_value) {
  PlanWeights weights;
  weights.present_value = present_value;
  const auto size = static_cast<std::size_t>(limits.plan_years + 1);
  for (auto* measure : {&weights.income, &weights.cost, &weights.establishment,
                        &weights.final_harvest_acres, &weights.open_acres}) {
    measure->assign(size, 0.0);
  }
  weights.tons.assign(limits.tons.size(), std::vector<double>(size, 0.0));
  return weights;
}

PlanWeights weights_of(const Limits& limits, const std::vector<double>& worth,
                       const std::string& stand_group) {
  PlanWeights weights = plain_weights(limits, 1.0);
  for (std::size_t r = 0; r < limits.rows.size(); ++r) {
    const LimitRow& row = limits.rows[r];
    if (worth[r] == 0.0 || !row.counts(stand_group)) continue;
    const auto add_to = [&](std::vector<double>& measure) {
      for (std::size_t i = 0; i < row.by_year.size(); ++i) {
        measure[static_cast<std::size_t>(row.first_year) + i] += worth[r] * row.by_year[i];
      }
    };
    switch (row.measure) {
      case Measure::income:
        add_to(weights.income);
        break;
      case Measure::establishment:
        add_to(weights.establishment);
        break;
      case Measure::final_harvest:
        add_to(weights.final_harvest_acres);
        break;
      case Measure::open:
        add_to(weights.open_acres);
        break;
      case Measure::tons:
        add_to(weights.tons[row.tons]);
        break;
      case Measure::ending_value:
        weights.ending_value += worth[r] * row.by_year.front();
        break;
    }
  }
  return weights;
}

}  // namespace staddle
