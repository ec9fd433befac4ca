// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/tract_figures.h"

#include <fmt/format.h>

#include <algorithm>

#include "report/cells.h"
#include "report/tract_years.h"
#include "signs/plain_words.h"

namespace staddle {
namespace {

// Upright bars over the periods, one group for each.
BarChart by_period(const TractFile& tract, const TractSolution& solution,
                   const std::string& value) {
  BarChart chart;
  chart.value = {value, false, true};
  const PlanYears years(tract);
  chart.category_title = tract.plan.period_yr == 1 ? "year" : "the first year of each period";
  if (!years.calendar()) chart.category_title += " of the plan";
  for (const TractPeriod& period : solution.periods) {
    chart.categories.push_back(years.calendar() ? years.name(period.from_year)
                                                : std::to_string(period.from_year));
  }
  return chart;
}

std::vector<Cell> row_of(const TractFile& tract, const TractPeriod& period) {
  return {cells::words(PlanYears(tract).span(period.from_year, period.to_year))};
}

std::string highest(const TractFile& tract, const TractPeriod& period) {
  return PlanYears(tract).span(period.from_year, period.to_year);
}

}  // namespace

Figure tract_money_figure(const TractFile& tract, const TractSolution& solution, Table table) {
  BarChart chart = by_period(tract, solution, "dollars a period, not discounted");
  BarSeries in{"income", {}, {}}, out{"cost", {}, {}};
  for (const TractPeriod& period : solution.periods) {
    in.values.push_back(period.income.in(dollars));
    in.labels.push_back(words::tract_money(period.income));
    out.values.push_back(-period.cost.in(dollars));
  }
  const auto most = std::ranges::max_element(solution.periods, {}, &TractPeriod::income);
  const auto least = std::ranges::min_element(solution.periods, {}, &TractPeriod::income);
  chart.series = {std::move(in), std::move(out)};
  return {"What the tract brings and costs, period by period",
          fmt::format("Bars above the line for income and below it for cost. Income is most in {}, "
                      "{}, and least in {}, {}.",
                      highest(tract, *most), words::tract_money(most->income),
                      highest(tract, *least), words::tract_money(least->income)),
          std::move(chart), std::move(table)};
}

Figure tract_tons_figure(const TractFile& tract, const TractSolution& solution) {
  BarChart chart = by_period(tract, solution, "tons a period");
  Table table{"", {{"years", "", true}}, {}};
  for (const std::string& product : solution.products) {
    table.columns.push_back({words::product(product), "tons"});
    chart.series.push_back({words::product(product), {}, {}});
  }
  for (const TractPeriod& period : solution.periods) {
    std::vector<Cell> row = row_of(tract, period);
    for (std::size_t i = 0; i < period.tons.size(); ++i) {
      row.push_back(cells::number(period.tons[i].in(tons)));
      chart.series[i].values.push_back(period.tons[i].in(tons));
    }
    table.rows.push_back(std::move(row));
  }
  return {"What timber is cut, period by period",
          "Bars for the tons of each product in every period.", std::move(chart), std::move(table)};
}

Figure tract_harvest_figure(const TractFile& tract, const TractSolution& solution) {
  BarChart chart = by_period(tract, solution, "acres a period");
  BarSeries harvested{"final harvest", {}, {}};
  Table table{"", {{"years", "", true}, {"final harvest", "acres"}}, {}};
  for (const TractPeriod& period : solution.periods) {
    const double acres_cut = period.final_harvest_acres.in(acres);
    std::vector<Cell> row = row_of(tract, period);
    row.push_back(cells::number(acres_cut, 1));
    table.rows.push_back(std::move(row));
    harvested.values.push_back(acres_cut);
    harvested.labels.push_back(acres_cut > 0.0 ? words::number(acres_cut) : "");
  }
  chart.series.push_back(std::move(harvested));
  return {"How many acres see their final harvest, period by period", "One bar for each period.",
          std::move(chart), std::move(table)};
}

}  // namespace staddle
