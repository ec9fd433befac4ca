// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/storm_writer.h"

#include "io/csv_writer.h"
#include "io/plan_writer.h"
#include "io/value_writer.h"

namespace staddle {
namespace {

using json::Value;

const char* name_of(Species species) {
  switch (species) {
    case Species::loblolly:
      return "loblolly";
    case Species::slash:
      return "slash";
    case Species::longleaf:
      break;
  }
  return "longleaf";
}

Value peril(const Peril& peril, const Peril* after_tax) {
  Value object{{"name", peril.name},
               {"annual_probability", json::number(peril.annual_probability)}};
  if (peril.logistic) {
    const LogisticShare& share = *peril.logistic;
    object["base_damage_share"] = json::number(share.base_damage_share);
    object["reference_height_ft"] = json::number(share.reference_height.in(feet));
    object["height_slope_per_10ft"] = json::number(share.height_slope_per_10ft);
    object["slenderness_slope_per_10"] = json::number(share.slenderness_slope_per_10);
    object["thinning_odds_ratio"] = json::number(share.thinning_odds_ratio);
    object["wind"] = share.wind;
    object["species_log_odds"] = json::number(share.species_log_odds);
  } else {
    object["damage_share"] = json::number(peril.constant_share);
  }
  object["salvage_share"] = json::number(peril.salvage_share);
  object["cleanup_usd_ac"] = json::usd_ac(peril.cleanup);
  if (after_tax != nullptr) {
    object["after_tax"] = {{"cleanup_usd_ac", json::usd_ac(after_tax->cleanup)}};
  }
  return object;
}

Value perils(const Hazard& hazard, const std::optional<Hazard>& after_tax) {
  Value list = Value::array();
  for (std::size_t i = 0; i < hazard.perils.size(); ++i) {
    list.push_back(peril(hazard.perils[i], after_tax ? &after_tax->perils[i] : nullptr));
  }
  return list;
}

Value quantiles(const RegimeFutures::Quantiles& values) {
  return {{"p05", json::usd_ac(values.p05)},
          {"p25", json::usd_ac(values.p25)},
          {"p50", json::usd_ac(values.p50)},
          {"p75", json::usd_ac(values.p75)},
          {"p95", json::usd_ac(values.p95)}};
}

Value worst_event(const WorstEvent& event) {
  return {{"age_yr", json::whole_age(event.at)},
          {"peril", event.peril},
          {"usd_ac", json::usd_ac(event.loss)}};
}

// The money of a regime's futures, by the keys of both forms of it.
Value money_of(const RegimeFutures& futures) {
  const auto& choices = futures.choices;
  return {{"expected_value_usd_ac", json::usd_ac(futures.expected_value)},
          {"simulated_mean_usd_ac", json::usd_ac(futures.mean)},
          {"standard_error_usd_ac", json::usd_ac(futures.standard_error)},
          {"difference_usd_ac", json::usd_ac(futures.mean - futures.expected_value)},
          {"quantiles_usd_ac", quantiles(futures.quantiles)},
          {"choices_mean_usd_ac", choices ? json::usd_ac(choices->mean) : Value(nullptr)},
          {"choices_standard_error_usd_ac",
           choices ? json::usd_ac(choices->standard_error) : Value(nullptr)}};
}

Value regime(const StormForecast::Told& told, const json::RegimeContext& context) {
  const RegimeFutures& futures = told.futures;
  Value object{{"name", told.name}, {"plan", json::plan(told.plan, context)}};
  object.update(money_of(futures));
  object["difference_in_standard_errors"] =
      json::optional(futures.difference_in_standard_errors, json::number);
  object["chance_half_lost"] = json::number(futures.chance_half_lost);
  object["worst_event"] = json::optional(futures.worst_event, worst_event);
  object["chance_cleared"] =
      futures.choices ? json::number(futures.choices->chance_cleared) : Value(nullptr);
  object["annual_loss_fraction"] = json::list(futures.annual_loss, [](const YearlyLossShare& year) {
    return Value{{"age_yr", json::whole_age(year.at)},
                 {"with_plan", json::number(year.with_plan)},
                 {"unthinned", json::optional(year.unthinned, json::number)}};
  });
  if (!told.after_tax) return object;
  object["after_tax"] = money_of(*told.after_tax);
  if (futures.worst_event) {
    object["worst_event"]["after_tax"] = json::optional(told.after_tax->worst_event, worst_event);
  }
  return object;
}

// "15:0.4 21:0.3", ages and shares of basal area.
std::string thinnings_cell(const Regime& regime) {
  std::string text;
  for (const Thinning& thinning : regime.thinnings) {
    if (!text.empty()) text += ' ';
    text += csv::number(thinning.at.in(years)) + ":" + csv::number(thinning.removal_fraction);
  }
  return text;
}

std::string money_cell(MoneyPerAcre amount) { return csv::number(amount.in(dollars_per_acre)); }

std::string csv_line(const StormForecast::Told& told) {
  const RegimeFutures& futures = told.futures;
  const RegimeFutures::Quantiles& values = futures.quantiles;
  std::vector<std::string> cells{told.name, thinnings_cell(told.plan.regime),
                                 csv::number(told.plan.regime.final_harvest.in(years))};
  for (const MoneyPerAcre amount : {futures.expected_value, futures.mean, futures.standard_error,
                                    futures.mean - futures.expected_value, values.p05, values.p25,
                                    values.p50, values.p75, values.p95}) {
    cells.push_back(money_cell(amount));
  }
  cells.push_back(csv::number(futures.chance_half_lost));
  if (const auto& worst = futures.worst_event) {
    cells.insert(cells.end(),
                 {csv::number(worst->at.in(years)), worst->peril, money_cell(worst->loss)});
  } else {
    cells.insert(cells.end(), 3, "");
  }
  if (const auto& choices = futures.choices) {
    cells.insert(cells.end(), {money_cell(choices->mean), money_cell(choices->standard_error),
                               csv::number(choices->chance_cleared)});
  } else {
    cells.insert(cells.end(), 3, "");
  }
  return csv::line(cells);
}

}  // namespace

std::string storm_json(const Scenario& scenario, const StormForecast& forecast) {
  static const std::vector<OtherTimber> none;
  const json::RegimeContext context{scenario.products, none, forecast.standing, true,
                                    forecast.successor_lev};
  const Hazard& hazard = scenario.hazard;
  Value result{{"format", "staddle-storm/1"},
               {"title", scenario.title},
               {"acres", json::number(scenario.area.in(acres))},
               {"futures", forecast.asked.futures},
               {"seed", forecast.asked.seed},
               {"choices", forecast.asked.choices},
               {"zone", hazard.zone},
               {"species", name_of(hazard.species)},
               {"recovery_yr", json::number(hazard.recovery_yr)},
               {"perils", perils(hazard, forecast.hazard_after_tax)},
               {"mark", "assumption: chances, damage shares, odds ratios and recovery"}};
  result["regimes"] = json::list(
      forecast.regimes, [&](const StormForecast::Told& told) { return regime(told, context); });
  result["assumed"] = json::assumptions(scenario.assumed);
  return json::result_text(result);
}

std::string storm_csv(const StormForecast& forecast) {
  std::string text = csv::line(
      {"name", "thinnings", "final_harvest_age_yr", "expected_value_usd_ac",
       "simulated_mean_usd_ac", "standard_error_usd_ac", "difference_usd_ac", "p05_usd_ac",
       "p25_usd_ac", "p50_usd_ac", "p75_usd_ac", "p95_usd_ac", "chance_half_lost",
       "worst_event_age_yr", "worst_event_peril", "worst_event_usd_ac", "choices_mean_usd_ac",
       "choices_standard_error_usd_ac", "chance_cleared"});
  for (const StormForecast::Told& told : forecast.regimes) text += csv_line(told);
  return text;
}

}  // namespace staddle
