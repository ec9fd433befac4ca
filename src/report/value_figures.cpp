// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "report/cells.h"
#include "report/plan_words.h"
#include "report/stand_figures.h"
#include "signs/plain_words.h"

namespace staddle {
namespace {

double usd(const PricedRegime& priced) { return priced.value.objective.in(dollars_per_acre); }

Cell worth_of(const std::optional<PricedRegime>& priced) {
  return priced ? cells::per_acre(priced->value.objective) : cells::words("not allowed");
}

Table final_age_table(const StandTelling& telling) {
  const MoneyPerAcre best = telling.answers.advice.best.value.objective;
  Table table{"", {{"final harvest"}}, {}};
  if (telling.dates().calendar()) table.columns.push_back({"age", "years"});
  for (const Column& column : std::vector<Column>{{"worth", "$/acre"},
                                                  {"loss", "$/acre"},
                                                  {"thinnings then", "share of basal area", true},
                                                  {"without thinning", "$/acre"}}) {
    table.columns.push_back(column);
  }
  for (const ValueByFinalAge::At& at : telling.answers.by_final_age->ages) {
    if (!at.best) continue;
    std::vector<Cell> row{
        {telling.dates().name(at.final_harvest), telling.place_of(at.final_harvest)}};
    if (telling.dates().calendar()) row.push_back(cells::whole(at.final_harvest.whole()));
    row.push_back(worth_of(at.best));
    row.push_back(cells::per_acre(best - at.best->value.objective));
    row.push_back(cells::words(telling.answer.cuts_brief(at.best->regime)));
    row.push_back(worth_of(at.unthinned));
    table.rows.push_back(std::move(row));
  }
  return table;
}

std::string share_name(double removal) { return words::number(100.0 * removal) + " %"; }

Table first_thinning_table(const StandTelling& telling) {
  const ValueMap& map = *telling.answers.first_thinning_map;
  Table table{"", {{"first thinning"}}, {}};
  for (const double removal : map.removals) {
    table.columns.push_back({words::percent(removal), "$/acre"});
  }
  for (std::size_t i = 0; i < map.ages.size(); ++i) {
    std::vector<Cell> row{{telling.dates().name(map.ages[i]), telling.place_of(map.ages[i])}};
    for (const auto& cells_of_share : map.cells) row.push_back(worth_of(cells_of_share[i]));
    table.rows.push_back(std::move(row));
  }
  return table;
}

// The highest cell; among equals that of the plan, else the first.
HeatMap::Place best_place(const StandTelling& telling) {
  const ValueMap& map = *telling.answers.first_thinning_map;
  const std::vector<Thinning>& planned = telling.answers.advice.best_plan.regime.thinnings;
  HeatMap::Place best;
  const PricedRegime* highest = nullptr;
  for (std::size_t row = 0; row < map.cells.size(); ++row) {
    for (std::size_t column = 0; column < map.ages.size(); ++column) {
      const auto& cell = map.cells[row][column];
      if (!cell) continue;
      const bool is_plan = !planned.empty() && planned.front().at == map.ages[column] &&
                           planned.front().removal_fraction == map.removals[row];
      if (highest && !(usd(*cell) > usd(*highest)) && !is_plan) continue;
      highest = &*cell;
      best = {row, column};
      if (is_plan) return best;
    }
  }
  return best;
}

}  // namespace

Figure final_age_figure(const StandTelling& telling) {
  const Advice& advice = telling.answers.advice;
  const double best = advice.best.value.objective.in(dollars_per_acre);
  const double tolerance = advice.near_best.tolerance.in(dollars_per_acre);
  LineSeries any{"the best plan that ends then", {}, true}, none{"without any thinning", {}, true};
  for (const ValueByFinalAge::At& at : telling.answers.by_final_age->ages) {
    const double x = telling.place_of(at.final_harvest);
    const auto point = [&](const std::optional<PricedRegime>& priced) {
      return priced ? std::optional(FigurePoint{x, usd(*priced)}) : std::nullopt;
    };
    any.points.push_back(point(at.best));
    none.points.push_back(point(at.unthinned));
  }
  const Age last = telling.answer.final_age();
  LineChart chart;
  chart.x = telling.time_axis("final harvest");
  chart.y = {telling.worth(), false, false};
  chart.series.push_back(std::move(any));
  chart.series.push_back(std::move(none));
  chart.marks.push_back({telling.place_of(last), "the plan, " + telling.dates().name(last)});
  chart.band = LineChart::Band{
      best - tolerance, best,
      fmt::format("within {} of the best", words::money(advice.near_best.tolerance))};
  return {"What an acre is worth if the final harvest comes sooner or later",
          fmt::format("A line of worth against the time of the final harvest, every thinning "
                      "chosen anew for each. The best is {} an acre, {}; final harvests {} come "
                      "within {} of it.",
                      words::money(advice.best.value.objective), telling.dates().on(last),
                      telling.dates().within(advice.near_best.final_harvest_low,
                                             advice.near_best.final_harvest_high),
                      words::money(advice.near_best.tolerance)),
          std::move(chart), final_age_table(telling)};
}

Figure first_thinning_figure(const StandTelling& telling) {
  const ValueMap& map = *telling.answers.first_thinning_map;
  HeatMap drawing;
  drawing.x_title = telling.time_axis("first thinning").title;
  drawing.y_title = "share of the basal area that it takes";
  drawing.value_title = telling.worth();
  for (const Age at : map.ages) {
    drawing.columns.push_back(std::to_string(static_cast<int>(telling.place_of(at))));
  }
  for (std::size_t row = 0; row < map.removals.size(); ++row) {
    drawing.rows.push_back(share_name(map.removals[row]));
    drawing.values.emplace_back();
    for (const auto& cell : map.cells[row]) {
      drawing.values.back().push_back(cell ? std::optional(usd(*cell)) : std::nullopt);
    }
  }
  const HeatMap::Place best = best_place(telling);
  drawing.best = best;
  const MoneyPerAcre tolerance = telling.answers.advice.near_best.tolerance;
  drawing.within = tolerance.in(dollars_per_acre);
  drawing.within_name = "within " + words::money(tolerance) + " of it";
  drawing.round_to = 5.0;
  const PricedRegime& highest = *map.cells[best.row][best.column];
  return {
      "What an acre is worth by the time and the weight of the first thinning",
      fmt::format("A map of worth, darker for more, over the time of the first thinning and "
                  "the share of basal area that it takes; all that follows is chosen anew in "
                  "every field. The darkest field is {} {}, worth {} an acre.",
                  words::percent(map.removals[best.row]), telling.dates().on(map.ages[best.column]),
                  words::money(highest.value.objective)),
      std::move(drawing), first_thinning_table(telling)};
}

Figure hold_figure(const StandTelling& telling) {
  const Ledger& ledger = telling.answers.hold->ledger;
  LineSeries growth{"what the timber grows in worth", {}, true};
  LineSeries required{"what it has to grow at your rate", {}};
  Table table{"", {}, {}};
  cells::add_date_columns(telling.dates(), table.columns);
  for (const Column& column : std::vector<Column>{{"timber", "$/acre"},
                                                  {"grows in worth", "percent"},
                                                  {"required", "percent"},
                                                  {"loss if sold then", "$/acre"}}) {
    table.columns.push_back(column);
  }
  const auto percent = [](const std::optional<double>& share) {
    return share ? cells::number(100.0 * *share, 1) : cells::blank();
  };
  for (const LedgerRow& year : ledger.years) {
    const double x = telling.place_of(year.at);
    if (year.value_growth) growth.points.push_back(FigurePoint{x, 100.0 * *year.value_growth});
    if (year.required) required.points.push_back(FigurePoint{x, 100.0 * *year.required});
    std::vector<Cell> row;
    cells::add_date(telling.dates(), year.at, row);
    row.push_back(cells::per_acre(year.stumpage));
    row.push_back(percent(year.value_growth));
    row.push_back(percent(year.required));
    row.push_back(cells::per_acre(year.loss_against_best));
    table.rows.push_back(std::move(row));
  }
  const Age ripe = ledger.matures_at;
  LineChart chart;
  chart.x = telling.time_axis("year");
  chart.y = {"percent a year", false, true};
  chart.series.push_back(std::move(growth));
  chart.series.push_back(std::move(required));
  chart.marks.push_back({telling.place_of(ripe), "mature, " + telling.dates().name(ripe)});
  return {"What one more year of waiting earns, if nothing is thinned",
          fmt::format("Two lines in percent a year: how fast the timber grows in worth, and how "
                      "fast it has to, the land included. Unthinned the stand is best sold {}.",
                      telling.dates().in(ripe)),
          std::move(chart), std::move(table)};
}

}  // namespace staddle
