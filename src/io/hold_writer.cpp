// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/hold_writer.h"

#include "io/csv_writer.h"
#include "io/value_writer.h"

namespace staddle {
namespace {

using json::Value;

std::optional<int> year_number_of(const Scenario& scenario, Age at) {
  if (!scenario.present_year) return std::nullopt;
  return (*scenario.present_year + (at - scenario.stand.standing->at)).whole();
}

Value growth_value(const LedgerRow::Growth& growth) {
  return {{"volume", json::usd_ac(growth.volume)}, {"step_up", json::usd_ac(growth.step_up)}};
}

Value money_of(const LedgerRow& row) {
  return {{"stumpage_usd_ac", json::usd_ac(row.stumpage)},
          {"growth_usd_ac", json::optional(row.growth, growth_value)},
          {"forest_value_if_cut_usd_ac", json::usd_ac(row.forest_value_if_cut)},
          {"loss_against_best_usd_ac", json::usd_ac(row.loss_against_best)}};
}

Value row_value(const Scenario& scenario, const LedgerRow& row) {
  return {{"age_yr", json::whole_age(row.at)},
          {"calendar_year",
           json::optional(year_number_of(scenario, row.at), [](int year) { return Value(year); })},
          {"tons_ac", json::tons_by_product(scenario.products, row.tons)},
          {"stumpage_usd_ac", json::usd_ac(row.stumpage)},
          {"growth_usd_ac", json::optional(row.growth, growth_value)},
          {"value_growth_fraction", json::optional(row.value_growth, json::number)},
          {"required_fraction", json::optional(row.required, json::number)},
          {"forest_value_if_cut_usd_ac", json::usd_ac(row.forest_value_if_cut)},
          {"loss_against_best_usd_ac", json::usd_ac(row.loss_against_best)}};
}

Value years_value(const Scenario& scenario, const Ledger& ledger, const Ledger* after_tax) {
  Value years = Value::array();
  for (std::size_t i = 0; i < ledger.years.size(); ++i) {
    Value row = row_value(scenario, ledger.years[i]);
    if (after_tax != nullptr) row["after_tax"] = money_of(after_tax->years[i]);
    years.push_back(std::move(row));
  }
  return years;
}

Value after_thinning_value(const Scenario& scenario, const HoldAnswer::AfterThinning& after,
                           const Ledger* after_tax) {
  return {{"thinning",
           {{"age_yr", json::whole_age(after.thinning.at)},
            {"removal_fraction", json::number(after.thinning.removal_fraction)}}},
          {"years", years_value(scenario, after.ledger, after_tax)},
          {"matures_at_age_yr", json::whole_age(after.ledger.matures_at)}};
}

Value waiting_value(const Waiting& waiting) {
  return {{"years", waiting.years},
          {"gain_usd_ac", json::usd_ac(waiting.gain)},
          {"growth_fraction_per_yr", json::optional(waiting.growth_per_yr, json::number)},
          {"gain_today_usd_ac", json::usd_ac(waiting.gain_today)}};
}

std::string optional_cell(const std::optional<double>& value) {
  return value ? csv::number(*value) : "";
}

std::string csv_rows(const Scenario& scenario, const Ledger& ledger,
                     const std::string& thinned_at) {
  std::string text;
  for (const LedgerRow& row : ledger.years) {
    const std::optional<int> year = year_number_of(scenario, row.at);
    std::vector<std::string> cells{thinned_at, csv::number(row.at.in(years)),
                                   year ? csv::number(*year) : ""};
    for (const Yield& tons : row.tons) cells.push_back(csv::number(tons.in(tons_per_acre)));
    cells.push_back(csv::number(row.stumpage.in(dollars_per_acre)));
    cells.push_back(row.growth ? csv::number(row.growth->volume.in(dollars_per_acre)) : "");
    cells.push_back(row.growth ? csv::number(row.growth->step_up.in(dollars_per_acre)) : "");
    cells.push_back(optional_cell(row.value_growth));
    cells.push_back(optional_cell(row.required));
    cells.push_back(csv::number(row.forest_value_if_cut.in(dollars_per_acre)));
    cells.push_back(csv::number(row.loss_against_best.in(dollars_per_acre)));
    text += csv::line(cells);
  }
  return text;
}

}  // namespace

std::string hold_json(const Scenario& scenario, const HoldAnswer& answer,
                      const HoldAnswer* after_tax) {
  const bool thinned = answer.after_best_thinning.has_value();
  Value result{{"format", "staddle-hold/1"},
               {"title", scenario.title},
               {"real_discount_rate", json::number(scenario.costs.rate.per_year())},
               {"waiting", json::optional(answer.waiting, waiting_value)}};
  if (after_tax != nullptr && after_tax->waiting) {
    Value money = waiting_value(*after_tax->waiting);
    money.erase("years");
    money.erase("growth_fraction_per_yr");
    result["waiting"]["after_tax"] = std::move(money);
  }
  result["years"] =
      years_value(scenario, answer.ledger, after_tax != nullptr ? &after_tax->ledger : nullptr);
  result["matures_at_age_yr"] = json::whole_age(answer.ledger.matures_at);
  result["after_best_thinning"] = nullptr;
  if (thinned) {
    const Ledger* taxed = after_tax != nullptr ? &after_tax->after_best_thinning->ledger : nullptr;
    result["after_best_thinning"] =
        after_thinning_value(scenario, *answer.after_best_thinning, taxed);
  }
  if (after_tax != nullptr) {
    result["after_tax"] = {{"matures_at_age_yr", json::whole_age(after_tax->ledger.matures_at)},
                           {"note", "not tax advice"}};
  }
  result["assumed"] = json::assumptions(scenario.assumed);
  return json::result_text(result);
}

std::string hold_csv(const Scenario& scenario, const HoldAnswer& answer) {
  std::vector<std::string> head{"thinned_at_age_yr", "age_yr", "calendar_year"};
  for (const ProductLimit& product : scenario.products) head.push_back(product.name + "_tons_ac");
  for (const char* key :
       {"stumpage_usd_ac", "growth_volume_usd_ac", "growth_step_up_usd_ac", "value_growth_fraction",
        "required_fraction", "forest_value_if_cut_usd_ac", "loss_against_best_usd_ac"}) {
    head.push_back(key);
  }
  std::string text = csv::line(head) + csv_rows(scenario, answer.ledger, "");
  if (answer.after_best_thinning) {
    const auto& after = *answer.after_best_thinning;
    text += csv_rows(scenario, after.ledger, csv::number(after.thinning.at.in(years)));
  }
  return text;
}

}  // namespace staddle
