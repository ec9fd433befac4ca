// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "report/answer.h"
#include "report/cells.h"
#include "signs/plain_words.h"

namespace staddle {
namespace {

std::string name_of_cut(std::size_t index) { return fmt::format("thinning {}", index + 1); }

Table entries(const Answer& answer) {
  Table table{"What is cut and what is left, an acre", {}, {}};
  cells::add_date_columns(answer.dates, table.columns);
  for (const Column& column : std::vector<Column>{{"what", "", true},
                                                  {"basal area taken", "percent"},
                                                  {"basal area before", "sq ft"},
                                                  {"basal area after", "sq ft"},
                                                  {"trees before"},
                                                  {"trees after"},
                                                  {"mean diameter", "inches"},
                                                  {"dominant height", "feet"},
                                                  {"live crown", "percent"}}) {
    table.columns.push_back(column);
  }
  const auto add = [&](Age at, const std::string& what, double share, const StandMeasures& before,
                       const StandMeasures& after) {
    std::vector<Cell> row;
    cells::add_date(answer.dates, at, row);
    row.push_back(cells::words(what));
    row.push_back(cells::percent(share));
    row.push_back(cells::number(before.basal_area.in(square_feet_per_acre)));
    row.push_back(cells::number(after.basal_area.in(square_feet_per_acre)));
    row.push_back(cells::number(before.trees.in(trees_per_acre)));
    row.push_back(cells::number(after.trees.in(trees_per_acre)));
    row.push_back(cells::number(before.quadratic_mean_diameter.in(inches), 1));
    row.push_back(cells::number(before.dominant_height.in(feet)));
    row.push_back(before.live_crown_ratio ? cells::percent(*before.live_crown_ratio)
                                          : cells::blank());
    table.rows.push_back(std::move(row));
  };
  for (std::size_t i = 0; i < answer.cuts.size(); ++i) {
    const ThinningRecord& cut = *answer.cuts[i];
    add(cut.at, name_of_cut(i), cut.removal_fraction, cut.before, cut.after);
  }
  add(answer.final_age(), "final harvest", 1.0, answer.advice.best.final_harvest.before, {});
  return table;
}

// One row per entry: `tell` adds the cells after its name.
template <class Tell>
void add_entries(const Answer& answer, Table& table, Tell tell) {
  const auto add = [&](Age at, const std::string& what, const std::vector<Yield>& tons_cut,
                       MoneyPerAcre revenue, double standing) {
    std::vector<Cell> row = {cells::words(answer.dates.name(at)), cells::words(what)};
    tell(row, tons_cut, revenue, standing);
    table.rows.push_back(std::move(row));
  };
  for (std::size_t i = 0; i < answer.cuts.size(); ++i) {
    const ThinningRecord& cut = *answer.cuts[i];
    add(cut.at, name_of_cut(i), cut.tons, cut.revenue, cut.share_standing);
  }
  const HarvestRecord& harvest = answer.advice.best.final_harvest;
  add(answer.final_age(), "final harvest", harvest.tons, harvest.revenue, harvest.share_standing);
}

Table yields(const Answer& answer) {
  const Scenario& scenario = answer.scenario;
  const bool hazard = scenario.hazard.active();
  Table table{"What it yields, after fees", {{"when", "", true}, {"what", "", true}}, {}};
  for (const ProductLimit& product : scenario.products) {
    table.columns.push_back({words::product(product.name), "tons/acre"});
  }
  table.columns.push_back({"all products", "tons/acre"});
  table.columns.push_back({"whole tract", "tons"});
  table.columns.push_back({"an acre", "$"});
  table.columns.push_back({"whole tract", "$"});
  if (hazard) table.columns.push_back({"acres that stand", "percent"});
  add_entries(answer, table, [&](std::vector<Cell>& row, const std::vector<Yield>& tons_cut,
                                 MoneyPerAcre revenue, double standing) {
    for (const Yield& product : tons_cut) {
      row.push_back(cells::number(product.in(tons_per_acre), 1));
    }
    const Yield sum = answer.total(tons_cut);
    row.push_back(cells::number(sum.in(tons_per_acre), 1));
    row.push_back(cells::number(standing * (sum * scenario.area).in(tons)));
    row.push_back(cells::per_acre(revenue));
    row.push_back(cells::tract(standing * revenue * scenario.area));
    if (hazard) row.push_back(cells::percent(standing));
  });
  return table;
}

bool quoted_in_units(const ProductPrice& price) { return price.quoted.tons_per_unit > 0.0; }

// The same in the units in which prices were quoted, where some were.
std::optional<Table> quoted_units(const Answer& answer) {
  const PriceList& prices = answer.scenario.prices;
  if (std::ranges::none_of(prices, quoted_in_units)) return std::nullopt;
  Table table{"In the units of the prices", {{"when", "", true}, {"what", "", true}}, {}};
  for (std::size_t i = 0; i < prices.size(); ++i) {
    if (!quoted_in_units(prices[i])) continue;
    table.columns.push_back(
        {fmt::format("{}, ${:.4g} a unit of {:.4g} tons",
                     words::product(answer.scenario.products[i].name),
                     prices[i].quoted.usd_per_unit, prices[i].quoted.tons_per_unit),
         "units/acre"});
    table.columns.push_back({"whole tract", "units"});
  }
  add_entries(answer, table, [&](std::vector<Cell>& row, const std::vector<Yield>& tons_cut,
                                 MoneyPerAcre, double standing) {
    for (std::size_t i = 0; i < prices.size(); ++i) {
      if (!quoted_in_units(prices[i])) continue;
      const double units = tons_cut[i].in(tons_per_acre) / prices[i].quoted.tons_per_unit;
      row.push_back(cells::number(units, 1));
      row.push_back(cells::number(standing * units * answer.area().in(acres)));
    }
  });
  return table;
}

// Timber money comes from the growth equations and is rounded; the rest is as given.
bool is_result(const std::string& what) {
  return what.starts_with("thinning") || what == "final harvest" || what.starts_with("storm");
}

// Lines that recur year after year, drawn together.
struct Run {
  std::string what;
  Age from, to;
  MoneyPerAcre sum;
  int years = 0;
};

std::vector<Run> runs_of(const std::vector<CashFlowLine>& lines) {
  std::vector<Run> runs;
  for (const CashFlowLine& line : lines) {
    Run* open = nullptr;
    for (Run& run : runs) {
      if (run.what == line.what && run.to + years(1) == line.at) open = &run;
    }
    if (!open) {
      runs.push_back({line.what, line.at, line.at, dollars_per_acre(0), 0});
      open = &runs.back();
    }
    open->to = line.at;
    open->sum += line.amount;
    ++open->years;
  }
  return runs;
}

Table cash_flow(const Answer& answer) {
  Table table{"Cash flow an acre, in today's dollars, not discounted", {}, {}};
  if (answer.dates.calendar()) table.columns.push_back({"year", "", true});
  table.columns.push_back({"age", "years", true});
  table.columns.push_back({"what", "", true});
  table.columns.push_back({"each year", "$/acre"});
  table.columns.push_back({"in all", "$/acre"});
  const auto span = [](int from, int to) {
    return from == to ? std::to_string(from) : fmt::format("{} to {}", from, to);
  };
  for (const Run& run : runs_of(answer.advice.best.cash_flow)) {
    std::vector<Cell> row;
    if (answer.dates.calendar()) {
      row.push_back(
          cells::words(span(answer.dates.year_of(run.from), answer.dates.year_of(run.to))));
    }
    row.push_back(cells::words(span(run.from.whole(), run.to.whole())));
    row.push_back(cells::words(run.what));
    const auto money = is_result(run.what) ? cells::per_acre : cells::as_given;
    row.push_back(run.years > 1 ? money(run.sum / run.years) : cells::blank());
    row.push_back(money(run.sum));
    table.rows.push_back(std::move(row));
  }
  return table;
}

std::string returns(const Answer& answer) {
  const RegimeReport& best = answer.advice.best;
  std::string text;
  if (answer.advice.standing) {
    text = fmt::format(
        "The stand and its land are worth {} an acre under this plan (forest value); "
        "this rotation alone, without the land, {}.",
        words::money(best.value.objective), words::money(best.value.net_present_value));
    if (answer.advice.successor_lev) {
      text += fmt::format(" The land planted anew, for ever, is worth {} an acre (land expectation "
                          "value).", words::money(*answer.advice.successor_lev));
    }
  } else {
    text = fmt::format("The land is worth {} an acre under this plan (land expectation value); the "
                       "first rotation alone {}.",
                       words::money(best.value.objective),
                       words::money(best.value.net_present_value));
  }
  text += fmt::format(" As an even income that is {} an acre a year.",
                      words::money(best.equal_annual_equivalent));
  // A standing stand has its costs behind it: the ratio would say nothing.
  if (best.benefit_cost_ratio && !answer.advice.standing) {
    text += fmt::format(" Incomes are {} times the costs, both in today's money.",
                        words::number(*best.benefit_cost_ratio, 1));
  }
  if (best.internal_rate_of_return) {
    text += fmt::format(" The money earns {} percent a year beyond inflation (internal rate of "
                        "return).", words::number(100.0 * *best.internal_rate_of_return, 1));
  }
  return text;
}

// Tables show tenths of a ton.
bool some_tons_are_below_zero(const Answer& answer) {
  constexpr Yield shown = tons_per_acre(-0.05);
  return std::ranges::any_of(answer.cuts, [&](const ThinningRecord* cut) {
    return std::ranges::any_of(cut->tons, [&](Yield product) { return product <= shown; });
  });
}

}  // namespace

Section plan_section(const Answer& answer) {
  Section section{"The plan", {returns(answer)}, {entries(answer), yields(answer)}, {}};
  if (some_tons_are_below_zero(answer)) {
    section.paragraphs.push_back(
        "Tons below zero are no timber: a cut changes the mean diameter of what is left, and with "
        "it how much of that the equations count as each product. The dollars count them so.");
  }
  if (std::optional<Table> units = quoted_units(answer)) section.tables.push_back(*units);
  section.tables.push_back(cash_flow(answer));
  return section;
}

}  // namespace staddle
