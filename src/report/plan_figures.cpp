// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "report/cells.h"
#include "report/plan_words.h"
#include "report/stand_figures.h"
#include "signs/plain_words.h"

namespace staddle {
namespace {

// Sums smaller than this share of the largest are drawn without their figure.
constexpr double worth_a_label = 0.06;

// The stand unthinned, over the years of the plan; nothing where it is not known or the
// plan does not thin.
std::vector<YearRecord> unthinned_beside(const StandTelling& telling) {
  if (!telling.answers.stand_case || telling.answer.cuts.empty()) return {};
  return grow_unthinned(*telling.answers.stand_case, telling.answer.final_age());
}

const ThinningRecord* cut_at(const StandTelling& telling, Age at) {
  const auto& cuts = telling.answer.cuts;
  const auto found =
      std::ranges::find_if(cuts, [&](const ThinningRecord* cut) { return cut->at == at; });
  return found == cuts.end() ? nullptr : *found;
}

std::vector<FigureMark> marks_of_entries(const StandTelling& telling) {
  std::vector<FigureMark> marks;
  for (const ThinningRecord* cut : telling.answer.cuts) {
    marks.push_back({telling.place_of(cut->at), "thinning, " + telling.dates().name(cut->at)});
  }
  marks.push_back({telling.place_of(telling.answer.final_age()),
                   "final harvest, " + telling.dates().name(telling.answer.final_age())});
  return marks;
}

std::string entries_in_words(const StandTelling& telling) {
  return plan_in_words(telling.dates(), telling.answers.advice.best_plan.regime);
}

double square_feet_of(const StandMeasures& measures) {
  return measures.basal_area.in(square_feet_per_acre);
}

// Young trees have no measures that mean anything.
bool is_measurable(const StandMeasures& measures) {
  return measures.basal_area > square_feet_per_acre(0);
}

Table growth_table(const StandTelling& telling, const std::vector<YearRecord>& unthinned) {
  Table table{"", {}, {}};
  cells::add_date_columns(telling.dates(), table.columns);
  for (const Column& column : std::vector<Column>{{"", "", true},
                                                  {"basal area", "sq ft/acre"},
                                                  {"trees", "an acre"},
                                                  {"mean diameter", "inches"},
                                                  {"dominant height", "feet"},
                                                  {"live crown", "percent"}}) {
    table.columns.push_back(column);
  }
  if (!unthinned.empty()) table.columns.push_back({"basal area, unthinned", "sq ft/acre"});
  const auto add = [&](Age at, const std::string& when, const StandMeasures& stand, Cell beside) {
    std::vector<Cell> row;
    cells::add_date(telling.dates(), at, row);
    row.push_back(cells::words(when));
    row.push_back(cells::number(square_feet_of(stand)));
    row.push_back(cells::number(stand.trees.in(trees_per_acre)));
    row.push_back(cells::number(stand.quadratic_mean_diameter.in(inches), 1));
    row.push_back(cells::number(stand.dominant_height.in(feet)));
    row.push_back(stand.live_crown_ratio ? cells::percent(*stand.live_crown_ratio)
                                         : cells::blank());
    if (!unthinned.empty()) row.push_back(std::move(beside));
    table.rows.push_back(std::move(row));
  };
  const std::vector<YearRecord>& years = telling.answers.advice.best.years;
  for (std::size_t i = 0; i < years.size(); ++i) {
    if (!is_measurable(years[i].measures)) continue;
    const ThinningRecord* cut = cut_at(telling, years[i].at);
    const bool last = i + 1 == years.size();
    add(years[i].at, cut || last ? "before the cut" : "", years[i].measures,
        i < unthinned.size() ? cells::number(square_feet_of(unthinned[i].measures))
                             : cells::blank());
    if (cut) add(cut->at, "after it", cut->after, cells::blank());
  }
  return table;
}

Table tons_table(const StandTelling& telling) {
  Table table{"", {}, {}};
  cells::add_date_columns(telling.dates(), table.columns);
  table.columns.push_back({"", "", true});
  for (const ProductLimit& product : telling.answers.scenario.products) {
    table.columns.push_back({words::product(product.name), "tons/acre"});
  }
  table.columns.push_back({"worth standing", "$/acre"});
  const auto add = [&](Age at, const std::string& when, const std::vector<Yield>& tons,
                       const Cell& worth) {
    std::vector<Cell> row;
    cells::add_date(telling.dates(), at, row);
    row.push_back(cells::words(when));
    for (const Yield& product : tons) row.push_back(cells::number(product.in(tons_per_acre), 1));
    row.push_back(worth);
    table.rows.push_back(std::move(row));
  };
  const std::vector<YearRecord>& years = telling.answers.advice.best.years;
  for (std::size_t i = 0; i < years.size(); ++i) {
    if (!is_measurable(years[i].measures)) continue;
    const ThinningRecord* cut = cut_at(telling, years[i].at);
    const bool last = i + 1 == years.size();
    add(years[i].at, cut || last ? "before the cut" : "", years[i].tons,
        cells::per_acre(years[i].stumpage_value));
    if (cut) add(cut->at, "is cut", cut->tons, cells::per_acre(cut->revenue));
  }
  return table;
}

}  // namespace

double StandTelling::place_of(Age at) const {
  return dates().calendar() ? dates().year_of(at) : at.whole();
}

Axis StandTelling::time_axis(const std::string& what) const {
  return {dates().calendar() ? what : what + ", age of the stand", true, false};
}

std::string StandTelling::worth() const {
  return answers.advice.standing ? "worth of timber and land, $/acre" : "worth of the land, $/acre";
}

Figure options_figure(const StandTelling& telling, Table table) {
  BarChart chart;
  chart.direction = BarChart::Direction::lying;
  chart.value = {telling.worth() + ", in today's money", false, true};
  BarSeries worth{"worth", {}, {}};
  std::vector<std::string> told;
  for (const OwnerOption& option : telling.answers.options) {
    const MoneyPerAcre value = option.report.value.objective;
    chart.categories.push_back(option.name);
    worth.values.push_back(value.in(dollars_per_acre));
    worth.labels.push_back(words::money(value));
    told.push_back(option.name + " " + words::money(value));
  }
  chart.series.push_back(std::move(worth));
  return {"What an acre is worth under each way of managing it",
          "Bars, one for each way: " + words::list(told) + ".", std::move(chart), std::move(table)};
}

Figure cash_flow_figure(const StandTelling& telling, Table table) {
  std::map<int, std::pair<double, double>> by_age;
  for (const CashFlowLine& line : telling.answers.advice.best.cash_flow) {
    const double amount = line.amount.in(dollars_per_acre);
    auto& [in, out] = by_age[line.at.whole()];
    (amount < 0.0 ? out : in) += amount;
  }
  double largest = 0.0;
  for (const auto& [at, money] : by_age) {
    largest = std::max({largest, money.first, -money.second});
  }
  BarChart chart;
  chart.value = {"dollars an acre, not discounted", false, true};
  chart.category_title = telling.time_axis("year").title;
  BarSeries in{"money in", {}, {}}, out{"money out", {}, {}};
  const auto add = [&](BarSeries& series, double amount) {
    const bool told = std::abs(amount) >= worth_a_label * largest && amount != 0.0;
    series.values.push_back(amount == 0.0 ? std::nullopt : std::optional(amount));
    series.labels.push_back(told ? words::money(dollars_per_acre(amount)) : "");
  };
  for (int at = telling.dates().present().whole(); at <= telling.answer.final_age().whole(); ++at) {
    chart.categories.push_back(std::to_string(static_cast<int>(telling.place_of(age(at)))));
    add(in, by_age[at].first);
    add(out, by_age[at].second);
  }
  chart.series = {std::move(in), std::move(out)};
  return {"What the plan brings and costs, year by year",
          fmt::format("Bars above the line for money in and below it for money out. The plan: {}.",
                      entries_in_words(telling)),
          std::move(chart), std::move(table)};
}

Figure basal_area_figure(const StandTelling& telling) {
  const std::vector<YearRecord> unthinned = unthinned_beside(telling);
  LineSeries plan{"the plan", {}}, beside{"without thinning", {}};
  for (const YearRecord& year : telling.answers.advice.best.years) {
    if (!is_measurable(year.measures)) continue;
    const double x = telling.place_of(year.at);
    plan.points.push_back(FigurePoint{x, square_feet_of(year.measures)});
    if (const ThinningRecord* cut = cut_at(telling, year.at)) {
      plan.points.push_back(FigurePoint{x, square_feet_of(cut->after)});
    }
  }
  for (const YearRecord& year : unthinned) {
    if (!is_measurable(year.measures)) continue;
    beside.points.push_back(FigurePoint{telling.place_of(year.at), square_feet_of(year.measures)});
  }
  LineChart chart;
  chart.x = telling.time_axis("year");
  chart.y = {"basal area, square feet an acre", false, true};
  chart.series.push_back(std::move(plan));
  chart.marks = marks_of_entries(telling);
  if (!beside.points.empty()) chart.series.push_back(beside);
  return {"How the stand grows, and what each thinning takes",
          fmt::format("A line of basal area against time, falling at every thinning. The plan: {}.",
                      entries_in_words(telling)),
          std::move(chart), growth_table(telling, unthinned)};
}

Figure tons_figure(const StandTelling& telling) {
  const Scenario& scenario = telling.answers.scenario;
  LineChart chart;
  chart.x = telling.time_axis("year");
  chart.y = {"tons an acre", false, true};
  chart.marks = marks_of_entries(telling);
  for (std::size_t i = 0; i < scenario.products.size(); ++i) {
    LineSeries product{words::product(scenario.products[i].name), {}};
    for (const YearRecord& year : telling.answers.advice.best.years) {
      if (!is_measurable(year.measures)) continue;
      const double x = telling.place_of(year.at);
      product.points.push_back(FigurePoint{x, year.tons[i].in(tons_per_acre)});
      if (const ThinningRecord* cut = cut_at(telling, year.at)) {
        product.points.push_back(FigurePoint{x, (year.tons[i] - cut->tons[i]).in(tons_per_acre)});
      }
    }
    chart.series.push_back(std::move(product));
  }
  return {"What the standing timber is made of",
          "A line for the tons of each product, from now to the final harvest, falling where "
          "timber is cut.",
          std::move(chart), tons_table(telling)};
}

}  // namespace staddle
