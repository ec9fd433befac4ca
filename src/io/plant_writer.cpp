// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/plant_writer.h"

#include "io/csv_writer.h"
#include "io/file_names.h"
#include "io/plan_writer.h"
#include "io/site_methods.h"
#include "io/value_writer.h"
#include "staddle/scenario/planting.h"
#include "staddle/signs/cautions.h"

namespace staddle {
namespace {

using json::Value;

class PlantJson {
 public:
  PlantJson(const Scenario& scenario, const PlantSolution& solution)
      : scenario_(scenario), solution_(solution) {}

  Value result() const {
    Value result{{"format", "staddle-plant/1"},
                 {"title", scenario_.title},
                 {"acres", json::number(scenario_.area.in(acres))},
                 {"objective", "land_expectation_value"}};
    result["best"] = solution_.ranking.empty() ? Value(nullptr) : name(solution_.ranking.front());
    result["used"] =
        used_alternative(scenario_) ? Value(used_alternative(scenario_)->name) : Value(nullptr);
    result["alternatives"] = json::list(
        solution_.alternatives, [&](const AlternativeAnswer& one) { return alternative(one); });
    result["as_stated"] = as_stated();
    result["gates"] = json::list(solution_.gates, [](const PlantGate& gate) {
      return Value{{"topic", gate.topic}, {"text", gate.text}};
    });
    result["species"] = json::list(solution_.species, [](const SpeciesAdvice& species) {
      return Value{{"name", species.name},
                   {"advice", species.advice},
                   {"reasons", species.reasons},
                   {"priced", species.priced}};
    });
    result["cautions"] = standing_cautions();
    result["assumed"] = json::assumptions(scenario_.assumed);
    return result;
  }

 private:
  Value name(std::size_t place) const { return solution_.alternatives[place].alternative.name; }

  // PLAN of bare land, whatever stands there now.
  Value plan(const PricedRegime& priced, const std::optional<PlanAfterTax>& after_tax) const {
    static const std::vector<OtherTimber> none;
    const json::RegimeContext context{scenario_.products, none, false, scenario_.hazard.active(),
                                      std::nullopt};
    return json::plan({priced.regime, priced.value, priced.value.objective, after_tax}, context);
  }

  static Value money(const std::optional<MoneyPerAcre>& amount) {
    return json::optional(amount, json::usd_ac);
  }

  Value alternative(const AlternativeAnswer& one) const {
    const EstablishmentAlternative& ways = one.alternative;
    const std::optional<TreeDensity> planted = planting_by(scenario_, &ways).planted;
    Value object{{"name", ways.name},
                 {"from", ways.from.empty() ? Value(nullptr) : Value(ways.from)}};
    object["methods"] = json::list(ways.methods, site_method_name);
    object["planted_tpa"] = json::optional(
        planted, [](TreeDensity trees) { return json::number(trees.in(trees_per_acre)); });
    object["site_index_shift_ft"] = json::number(ways.site_index_shift.in(feet));
    object["years_gained"] = json::number(ways.response.years_gained);
    object["hardwood_percent"] = json::number(ways.response.hardwood_percent);
    object["precommercial_thinning"] =
        json::optional(ways.response.precommercial, [](const PrecommercialThinning& thinning) {
          return Value{{"age_yr", json::whole_age(thinning.at)},
                       {"to_tpa", json::number(thinning.to.in(trees_per_acre))}};
        });
    object["best"] = one.best ? plan(*one.best, one.after_tax ? std::optional(one.after_tax->plan)
                                                              : std::nullopt)
                              : Value(nullptr);
    object["shut"] = one.shut;
    object["reason"] = one.reason.empty() ? Value(nullptr) : Value(one.reason);
    object["establishment_usd_ac"] = json::usd_ac(one.establishment);
    object["later_practices_usd_ac"] = json::usd_ac(one.later_practices);
    object["rank"] = json::optional(one.rank, [](std::size_t rank) { return Value(rank); });
    object["loss_against_best_usd_ac"] = money(one.loss_against_best);
    object["next_better"] =
        json::optional(one.next_better, [&](std::size_t place) { return name(place); });
    object["gain_of_next_better_usd_ac"] = money(one.gain_of_next_better);
    if (one.after_tax) object["after_tax"] = after_tax(*one.after_tax);
    object["break_even"] = json::optional(one.break_even, break_even);
    object["outside_studied_range"] = json::list(one.extrapolations, [](const Extrapolation& far) {
      return Value{{"what", far.what},
                   {"value", json::number(far.value)},
                   {"range", {json::number(far.low), json::number(far.high)}}};
    });
    object["sources"] = ways.sources;
    return object;
  }

  static Value after_tax(const AlternativeAfterTax& taxed) {
    return {{"establishment_usd_ac", json::usd_ac(taxed.establishment)},
            {"later_practices_usd_ac", json::usd_ac(taxed.later_practices)},
            {"loss_against_best_usd_ac", money(taxed.loss_against_best)},
            {"gain_of_next_better_usd_ac", money(taxed.gain_of_next_better)}};
  }

  static Value break_even(const BreakEvenResponse& response) {
    return {{"key", response.key},
            {"unit", response.unit},
            {"today", json::number(response.today)},
            {"value", json::optional(response.value, json::number)},
            {"reason", response.reason.empty() ? Value(nullptr) : Value(response.reason)}};
  }

  Value as_stated() const {
    if (!solution_.as_stated) return nullptr;
    return {{"best", plan(*solution_.as_stated, solution_.as_stated_after_tax)}};
  }

  const Scenario& scenario_;
  const PlantSolution& solution_;
};

std::string thinnings_text(const Regime& regime) {
  std::string text;
  for (const Thinning& thinning : regime.thinnings) {
    if (!text.empty()) text += ' ';
    text += csv::number(thinning.at.in(years)) + ":" + csv::number(thinning.removal_fraction);
  }
  return text;
}

}  // namespace

std::string plant_json(const Scenario& scenario, const PlantSolution& solution) {
  return json::result_text(PlantJson(scenario, solution).result());
}

std::string plant_csv(const PlantSolution& solution) {
  std::string text =
      csv::line({"name", "rank", "establishment_usd_ac", "later_practices_usd_ac", "years_gained",
                 "site_index_shift_ft", "hardwood_percent", "land_expectation_value_usd_ac",
                 "loss_against_best_usd_ac", "thinnings", "final_harvest_age_yr", "break_even_key",
                 "break_even_value", "reason"});
  const auto amount = [](const std::optional<MoneyPerAcre>& money) {
    return money ? csv::number(money->in(dollars_per_acre)) : "";
  };
  for (const AlternativeAnswer& one : solution.alternatives) {
    const EstablishmentResponse& response = one.alternative.response;
    std::vector<std::string> cells{one.alternative.name,
                                   one.rank ? std::to_string(*one.rank) : "",
                                   amount(one.establishment),
                                   amount(one.later_practices),
                                   csv::number(response.years_gained),
                                   csv::number(one.alternative.site_index_shift.in(feet)),
                                   csv::number(response.hardwood_percent)};
    cells.push_back(one.best ? amount(one.best->value.objective) : "");
    cells.push_back(amount(one.loss_against_best));
    cells.push_back(one.best ? thinnings_text(one.best->regime) : "");
    cells.push_back(one.best ? csv::number(one.best->regime.final_harvest.in(years)) : "");
    cells.push_back(one.break_even ? one.break_even->key : "");
    cells.push_back(one.break_even && one.break_even->value ? csv::number(*one.break_even->value)
                                                            : "");
    cells.push_back(one.reason);
    text += csv::line(cells);
  }
  return text;
}

std::string scenario_using(const std::string& scenario, const std::string& alternative,
                           const std::function<std::string(const std::string&)>& relocate) {
  Value value = Value::parse(scenario, nullptr, true, true);
  value.at("establishment")["use"] = alternative;
  json::relocate_files(value, relocate);
  return json::result_text(value);
}

}  // namespace staddle
