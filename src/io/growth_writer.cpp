// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/growth_writer.h"

#include <fmt/format.h>

#include <algorithm>

#include "io/csv_writer.h"
#include "io/value_writer.h"
#include "report/fitted_words.h"
#include "report/wrap.h"
#include "signs/plain_words.h"
#include "staddle/report/text.h"

namespace staddle {
namespace {

using json::Value;

std::optional<CalendarYear> year_of(const Scenario& scenario, Age at) {
  if (!scenario.present_year) return std::nullopt;
  const Age present = scenario.is_standing() ? scenario.stand.standing->at : age(0);
  return *scenario.present_year + (at - present);
}

const ThinningRecord* thinning_at(const RegimeReport& regime, Age at) {
  for (const ThinningRecord& thinning : regime.thinnings) {
    if (thinning.at == at && !thinning.cuts_nothing) return &thinning;
  }
  return nullptr;
}

GrowthRow after(const GrowthRow& before, const ThinningRecord& thinning,
                const ThinningRecord* after_tax) {
  GrowthRow row = before;
  row.when = GrowthRow::When::after_cut;
  row.measures = thinning.after;
  row.stumpage = thinning.stumpage_left;
  if (after_tax != nullptr) row.stumpage_after_tax = after_tax->stumpage_left;
  for (std::size_t i = 0; i < row.tons.size(); ++i) row.tons[i] -= thinning.tons[i];
  return row;
}

const char* when_text(GrowthRow::When when) {
  switch (when) {
    case GrowthRow::When::before_cut:
      return "before cut";
    case GrowthRow::When::after_cut:
      return "after cut";
    case GrowthRow::When::only:
      break;
  }
  return "";
}

Value row_json(const Scenario& scenario, const GrowthRow& row) {
  const std::string when = when_text(row.when);
  Value object{{"age_yr", json::whole_age(row.at)},
               {"calendar_year",
                json::optional(row.year, [](CalendarYear year) { return Value(year.whole()); })},
               {"when", when.empty() ? Value(nullptr) : Value(when)},
               {"tons_ac", json::tons_by_product(scenario.products, row.tons)},
               {"stumpage_usd_ac", json::usd_ac(row.stumpage)}};
  if (row.stumpage_after_tax) {
    object["after_tax"] = {{"stumpage_usd_ac", json::usd_ac(*row.stumpage_after_tax)}};
  }
  if (scenario.hazard.active()) object["share_standing"] = json::number(row.share_standing);
  object.update(json::measures(row.measures));
  return object;
}

std::string optional_number(const std::optional<double>& value) {
  return value ? csv::number(*value) : "";
}

bool has_cuts(const RegimeReport& regime) {
  return std::any_of(regime.thinnings.begin(), regime.thinnings.end(),
                     [](const ThinningRecord& thinning) { return !thinning.cuts_nothing; });
}

std::vector<Cell> row_cells(const Scenario& scenario, const GrowthRow& row, bool with_cuts) {
  std::vector<Cell> cells;
  const auto add = [&cells](double value, int decimals = 0) {
    cells.push_back({words::number(value, decimals), value});
  };
  if (row.year) cells.push_back({fmt::format("{}", row.year->whole()), row.year->in(years)});
  add(row.at.in(years));
  if (with_cuts) cells.push_back({when_text(row.when)});
  for (const Yield& tons : row.tons) add(tons.in(tons_per_acre), 1);
  add(row.stumpage.in(dollars_per_acre));
  if (row.stumpage_after_tax) add(row.stumpage_after_tax->in(dollars_per_acre));
  if (scenario.hazard.active()) add(100 * row.share_standing);
  const StandMeasures& stand = row.measures;
  add(stand.dominant_height.in(feet));
  add(stand.trees.in(trees_per_acre));
  add(stand.basal_area.in(square_feet_per_acre));
  add(stand.quadratic_mean_diameter.in(inches), 1);
  if (stand.live_crown_ratio) {
    add(100 * *stand.live_crown_ratio);
  } else {
    cells.push_back({""});
  }
  return cells;
}

// "thin by a third at age 17; final harvest at age 33"
std::string in_words(const RegimeReport& regime) {
  std::string text;
  for (const ThinningRecord& thinning : regime.thinnings) {
    const int at = thinning.at.whole();
    text += thinning.cuts_nothing
                ? fmt::format("nothing is cut at age {}, when the stand has not reached the "
                              "residual stated; ",
                              at)
                : fmt::format("thin by {} at age {}; ", words::removal(thinning.removal_fraction),
                              at);
  }
  if (regime.name == "none") return "nothing is cut";
  return text + fmt::format("final harvest at age {}", regime.final_harvest_age.whole());
}

}  // namespace

std::vector<GrowthRow> growth_rows(const Scenario& scenario, const RegimeReport& regime,
                                   const RegimeReport* after_tax) {
  std::vector<GrowthRow> rows;
  for (std::size_t i = 0; i < regime.years.size(); ++i) {
    const YearRecord& year = regime.years[i];
    GrowthRow row{year.at,       year_of(scenario, year.at), GrowthRow::When::only,
                  year.tons,     year.stumpage_value,        std::nullopt,
                  year.measures, year.share_standing};
    if (after_tax != nullptr) row.stumpage_after_tax = after_tax->years[i].stumpage_value;
    const ThinningRecord* thinning = thinning_at(regime, year.at);
    if (thinning != nullptr) row.when = GrowthRow::When::before_cut;
    rows.push_back(row);
    if (thinning == nullptr) continue;
    rows.push_back(
        after(row, *thinning, after_tax != nullptr ? thinning_at(*after_tax, year.at) : nullptr));
  }
  return rows;
}

std::string growth_json(const Scenario& scenario, const RegimeReport& regime,
                        const GrowthContext& context) {
  Value thinnings = json::list(regime.thinnings, [](const ThinningRecord& thinning) {
    return Value{{"age_yr", json::whole_age(thinning.at)},
                 {"removal_fraction", json::number(thinning.removal_fraction)}};
  });
  Value rows = json::list(growth_rows(scenario, regime, context.after_tax),
                          [&](const GrowthRow& row) { return row_json(scenario, row); });
  return json::result_text({{"format", "staddle-growth/1"},
                            {"title", scenario.title},
                            {"regime",
                             {{"name", regime.name},
                              {"thinnings", std::move(thinnings)},
                              {"final_harvest_age_yr", json::whole_age(regime.final_harvest_age)}}},
                            {"outside_fitted_range",
                             json::outside_ranges(context.outside_fitted_range)},
                            {"rows", std::move(rows)}});
}

std::string growth_csv(const Scenario& scenario, const RegimeReport& regime,
                       const GrowthContext& context) {
  const bool hazard = scenario.hazard.active();
  std::vector<std::string> head{"age_yr", "calendar_year", "when"};
  for (const ProductLimit& product : scenario.products) head.push_back(product.name + "_tons_ac");
  head.push_back("stumpage_usd_ac");
  if (context.after_tax != nullptr) head.push_back("stumpage_after_tax_usd_ac");
  if (hazard) head.push_back("share_standing");
  for (const char* key :
       {"tpa", "basal_area_ft2_ac", "qmd_in", "dominant_height_ft", "live_crown_ratio"}) {
    head.push_back(key);
  }
  std::string text = csv::line(head);
  for (const GrowthRow& row : growth_rows(scenario, regime, context.after_tax)) {
    std::vector<std::string> cells{csv::number(row.at.in(years)),
                                   row.year ? csv::number(row.year->in(years)) : "",
                                   when_text(row.when)};
    for (const Yield& tons : row.tons) cells.push_back(csv::number(tons.in(tons_per_acre)));
    cells.push_back(csv::number(row.stumpage.in(dollars_per_acre)));
    if (row.stumpage_after_tax) {
      cells.push_back(csv::number(row.stumpage_after_tax->in(dollars_per_acre)));
    }
    if (hazard) cells.push_back(csv::number(row.share_standing));
    const StandMeasures& stand = row.measures;
    cells.push_back(csv::number(stand.trees.in(trees_per_acre)));
    cells.push_back(csv::number(stand.basal_area.in(square_feet_per_acre)));
    cells.push_back(csv::number(stand.quadratic_mean_diameter.in(inches)));
    cells.push_back(csv::number(stand.dominant_height.in(feet)));
    cells.push_back(optional_number(stand.live_crown_ratio));
    text += csv::line(cells);
  }
  return text;
}

std::string growth_text(const Scenario& scenario, const RegimeReport& regime,
                        const GrowthContext& context) {
  Table table;
  if (scenario.present_year) table.columns.push_back({"year"});
  table.columns.push_back({"age", "years"});
  const bool with_cuts = has_cuts(regime);
  if (with_cuts) table.columns.push_back({"", "", true});
  for (const ProductLimit& product : scenario.products) {
    table.columns.push_back({words::product(product.name), "tons/acre"});
  }
  table.columns.push_back({"stumpage value", "$/acre"});
  if (context.after_tax != nullptr) table.columns.push_back({"left after tax", "$/acre"});
  if (scenario.hazard.active()) table.columns.push_back({"still standing", "percent"});
  for (const Column& column :
       {Column{"dominant height", "feet"}, Column{"trees", "per acre"},
        Column{"basal area", "sq ft/acre"}, Column{"mean diameter", "inches"},
        Column{"live crown ratio", "percent"}}) {
    table.columns.push_back(column);
  }
  for (const GrowthRow& row : growth_rows(scenario, regime, context.after_tax)) {
    table.rows.push_back(row_cells(scenario, row, with_cuts));
  }
  std::string text = fmt::format("{}\n{}: {}\n\n", scenario.title, regime.name, in_words(regime)) +
                     to_text(table);
  if (context.after_tax != nullptr) {
    text += "\nAfter federal tax, were all sold then; not tax advice.\n";
  }
  for (const std::string& words : fitted_words_of_years(context.outside_fitted_range)) {
    text += "\n" + wrapped(words, "", "", text_width) + "\n";
  }
  return text;
}

}  // namespace staddle
