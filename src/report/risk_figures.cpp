// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "report/cells.h"
#include "report/plan_words.h"
#include "report/stand_figures.h"
#include "signs/plain_words.h"

namespace staddle {
namespace {

BarChart lying(const std::string& axis, std::vector<BarSeries> series) {
  BarChart chart;
  chart.direction = BarChart::Direction::lying;
  chart.value = {axis, false, true};
  chart.series = std::move(series);
  return chart;
}

void add(BarSeries& series, const std::optional<MoneyPerAcre>& amount) {
  series.values.push_back(amount ? std::optional(amount->in(dollars_per_acre)) : std::nullopt);
  series.labels.push_back(amount ? words::money(*amount) : "no plan");
}

// The bars of a table whose first column names them; `column` holds their money.
BarSeries bars_of(const Table& table, const std::string& name, std::size_t column) {
  BarSeries series{name, {}, {}};
  for (const std::vector<Cell>& row : table.rows) {
    const auto& value = row[column].value;
    add(series, value ? std::optional(dollars_per_acre(*value)) : std::nullopt);
  }
  return series;
}

std::vector<std::string> names_of(const Table& table) {
  std::vector<std::string> names;
  for (const std::vector<Cell>& row : table.rows) names.push_back(row.front().text);
  return names;
}

}  // namespace

Figure storm_figure(const StandTelling& telling, Table table) {
  BarSeries before{"in the year before the thinning", {}, {}};
  BarSeries after{"in the first year after it", {}, {}};
  const auto add_share = [](BarSeries& series, double share) {
    series.values.push_back(100.0 * share);
    series.labels.push_back(words::number(100.0 * share, 2) + " %");
  };
  std::vector<std::string> names, told;
  for (const StormAfterThinning& storm : telling.answers.advice.storm->thinnings) {
    const std::string when = telling.dates().name(storm.at);
    names.push_back("thinning, " + when);
    add_share(before, storm.loss_share_before);
    add_share(after, storm.loss_share_after);
    told.push_back(
        fmt::format("{}: {} before and {} after", when, before.labels.back(), after.labels.back()));
  }
  BarChart chart = lying("acres lost in an average year, percent", {before, after});
  chart.categories = std::move(names);
  return {"What storms take in an average year, before and after each thinning",
          "Two bars for each thinning, in percent of the acres: " + words::list(told) + ".",
          std::move(chart), std::move(table)};
}

Figure plant_figure(const StandTelling& telling, Table table) {
  const PlantSolution& solution = *telling.answers.plant;
  BarSeries worth{"worth", {}, {}};
  for (const std::size_t place : solution.ranking) {
    add(worth, solution.alternatives[place].best->value.objective);
  }
  BarChart chart = lying("worth of the bare land, $/acre", {std::move(worth)});
  chart.categories = names_of(table);
  return {"What an acre of bare land is worth under each way to start the next stand",
          "One bar for each way, the best first; each at its own best plan. The figures stand in "
          "the table.",
          std::move(chart), std::move(table)};
}

Figure tax_figure(const StandTelling& telling, Table table) {
  BarChart chart =
      lying(telling.worth(), {bars_of(table, "before tax", 1), bars_of(table, "after tax", 2)});
  chart.categories = names_of(table);
  return {"What an acre is worth before and after federal tax",
          "Two bars for each plan, before and after tax; the figures stand in the table.",
          std::move(chart), std::move(table)};
}

Figure plots_figure(const StandTelling& telling, Table table) {
  const PlotsAnswer& plots = *telling.answers.advice.plots;
  BarSeries worth = bars_of(table, "worth", 3);
  BarChart chart = lying(telling.worth(), {std::move(worth)});
  for (const std::vector<Cell>& row : table.rows) {
    chart.categories.push_back(fmt::format("{}, {} square feet", row[0].text, row[1].text));
  }
  return {"What the best plan is worth at both ends of what the plots allow",
          fmt::format("Three bars: at the low end of the basal area, at its mean and at the high "
                      "end. The advice is {}.",
                      plots.same_advice ? "the same at both ends" : "not the same at both ends"),
          std::move(chart), std::move(table)};
}

Figure price_sets_figure(const StandTelling& telling) {
  const VarySolution& solution = *telling.answers.vary;
  const double rate = telling.answers.scenario.costs.rate.per_year();
  // The owner's own rate where it is among those asked for, else the first of them.
  const bool own = std::ranges::any_of(
      solution.cells, [&](const VaryCell& cell) { return cell.rate.per_year() == rate; });
  const double shown = own ? rate : solution.cells.front().rate.per_year();
  BarSeries best{"the best plan for those prices", {}, {}};
  BarSeries kept{"this report's plan kept to", {}, {}};
  std::vector<std::string> names;
  Table table{"",
              {{"prices", "", true},
               {"best", "$/acre"},
               {"this plan", "$/acre"},
               {"loss of keeping it", "$/acre"},
               {"best plan then", "", true}},
              {}};
  for (std::size_t i = 0; i < solution.cells.size(); ++i) {
    const VaryCell& cell = solution.cells[i];
    if (cell.rate.per_year() != shown) continue;
    const std::optional<MoneyPerAcre> value = cell.answer.value();
    std::optional<MoneyPerAcre> loss, held;
    if (!solution.regimes.empty()) loss = solution.regimes.front().loss[i];
    if (value && loss) held = *value - *loss;
    names.push_back(solution.price_scenarios[cell.price_scenario].name);
    add(best, value);
    add(kept, held);
    table.rows.push_back(
        {cells::words(names.back()), value ? cells::per_acre(*value) : cells::blank(),
         held ? cells::per_acre(*held) : cells::blank(),
         loss ? cells::cost_per_acre(*loss) : cells::blank(),
         cells::words(cell.answer.best ? plan_in_words(telling.dates(), cell.answer.best->regime)
                                       : "no plan: " + cell.answer.reason)});
  }
  BarChart chart = lying(telling.worth(), {std::move(best), std::move(kept)});
  chart.categories = std::move(names);
  return {fmt::format("What an acre is worth at other prices, at {} a year", words::chance(shown)),
          "Two bars for each set of prices: the plan that is best for them, and the plan of this "
          "report kept to all the same.",
          std::move(chart), std::move(table)};
}

Figure one_at_a_time_figure(const StandTelling& telling, Table table) {
  const VarySolution& solution = *telling.answers.vary;
  BarSeries low{"at the low end", {}, {}}, high{"at the high end", {}, {}};
  const std::optional<MoneyPerAcre> base = solution.base.value();
  const auto change = [&](const VaryAnswer& answer) -> std::optional<MoneyPerAcre> {
    if (!base || !answer.value()) return std::nullopt;
    return *answer.value() - *base;
  };
  std::vector<std::string> names = names_of(table);
  for (const OneAtATime& row : solution.one_at_a_time) {
    add(low, change(row.reoptimised[0]));
    add(high, change(row.reoptimised[1]));
  }
  BarChart chart = lying("change of worth, $/acre", {std::move(low), std::move(high)});
  chart.categories = std::move(names);
  return {"How much one figure alone would change what an acre is worth",
          "Two bars for each figure, for its low and its high end, the plan chosen anew for each.",
          std::move(chart), std::move(table)};
}

}  // namespace staddle
