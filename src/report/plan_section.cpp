// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "report/answer.h"
#include "report/cells.h"
#include "signs/plain_words.h"

namespace staddle {
namespace {

Table entries(const Answer& answer) {
  Table table{"What is cut and what is left", {}, {}};
  cells::add_date_columns(answer.dates, table.columns);
  for (const Column& column : std::vector<Column>{{"what is done", "", true},
                                                  {"basal area taken", "percent"},
                                                  {"basal area before", "sq ft/acre"},
                                                  {"basal area after", "sq ft/acre"},
                                                  {"trees before", "per acre"},
                                                  {"trees after", "per acre"},
                                                  {"mean diameter", "inches"},
                                                  {"height", "feet"},
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
    add(cut.at, fmt::format("thinning {}", i + 1), cut.removal_fraction, cut.before, cut.after);
  }
  add(answer.final_age(), "final harvest", 1.0, answer.advice.best.final_harvest.before, {});
  return table;
}

bool quoted_in_units(const ProductPrice& price) { return price.quoted.tons_per_unit > 0.0; }

// Tons and dollars of each entry; beside the tons the units in which the price was quoted.
Table yields(const Answer& answer) {
  const Scenario& scenario = answer.scenario;
  const bool hazard = scenario.hazard.active();
  Table table{"What it yields", {}, {}};
  cells::add_date_columns(answer.dates, table.columns);
  table.columns.push_back({"what is done", "", true});
  for (std::size_t i = 0; i < scenario.products.size(); ++i) {
    const std::string name = words::product(scenario.products[i].name);
    table.columns.push_back({name, "tons/acre"});
    if (quoted_in_units(scenario.prices[i])) {
      table.columns.push_back(
          {name, fmt::format("units of {:.4g} tons", scenario.prices[i].quoted.tons_per_unit)});
    }
  }
  for (const Column& column : std::vector<Column>{{"all products", "tons/acre"},
                                                  {"all products", "tons in all"},
                                                  {"after fees", "$/acre"},
                                                  {"after fees", "$ in all"}}) {
    table.columns.push_back(column);
  }
  if (hazard) table.columns.push_back({"acres that stand", "percent"});
  const auto add = [&](Age at, const std::string& what, const std::vector<Yield>& tons_cut,
                       MoneyPerAcre revenue, double standing) {
    std::vector<Cell> row;
    cells::add_date(answer.dates, at, row);
    row.push_back(cells::words(what));
    for (std::size_t i = 0; i < tons_cut.size(); ++i) {
      const double amount = tons_cut[i].in(tons_per_acre);
      row.push_back(cells::number(amount, 1));
      if (quoted_in_units(scenario.prices[i])) {
        row.push_back(cells::number(amount / scenario.prices[i].quoted.tons_per_unit, 1));
      }
    }
    const Yield sum = answer.total(tons_cut);
    row.push_back(cells::number(sum.in(tons_per_acre), 1));
    row.push_back(cells::number((sum * scenario.area).in(tons)));
    row.push_back(cells::per_acre(revenue));
    row.push_back(cells::tract(revenue * scenario.area));
    if (hazard) row.push_back(cells::percent(standing));
    table.rows.push_back(std::move(row));
  };
  for (std::size_t i = 0; i < answer.cuts.size(); ++i) {
    const ThinningRecord& cut = *answer.cuts[i];
    add(cut.at, fmt::format("thinning {}", i + 1), cut.tons, cut.revenue, cut.share_standing);
  }
  const HarvestRecord& harvest = answer.advice.best.final_harvest;
  add(answer.final_age(), "final harvest", harvest.tons, harvest.revenue, harvest.share_standing);
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
      row.push_back(cells::words(span(answer.dates.year_of(run.from), answer.dates.year_of(run.to))));
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
    text = fmt::format("The stand and its land are worth {} an acre under this plan (forest value); "
                       "this rotation alone, without the land, {}.",
                       words::money(best.value.objective),
                       words::money(best.value.net_present_value));
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
  if (best.benefit_cost_ratio) {
    text += fmt::format(" Incomes are {} times the costs, both in today's money.",
                        words::number(*best.benefit_cost_ratio, 1));
  }
  if (best.internal_rate_of_return) {
    text += fmt::format(" The money earns {} percent a year beyond inflation (internal rate of "
                        "return).", words::number(100.0 * *best.internal_rate_of_return, 1));
  }
  return text;
}

}  // namespace

Section plan_section(const Answer& answer) {
  return {"The plan", {returns(answer)}, {entries(answer), yields(answer), cash_flow(answer)}, {}};
}

}  // namespace staddle
