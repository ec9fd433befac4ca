// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/vary_writer.h"

#include <functional>

#include "io/plan_writer.h"
#include "io/value_writer.h"

namespace staddle {
namespace {

using json::Value;

class VaryJson {
 public:
  VaryJson(const Scenario& scenario, const VarySolution& solution)
      : scenario_(scenario), solution_(solution) {}

  Value result() const {
    Value result{{"format", "staddle-vary/1"},
                 {"title", scenario_.title},
                 {"acres", json::number(scenario_.area.in(acres))},
                 {"objective", solution_.standing ? "forest_value" : "land_expectation_value"}};
    result["price_scenarios"] = json::list(
        solution_.price_scenarios, [&](const PriceScenario& prices) { return price_set(prices); });
    result["cells"] = json::list(solution_.cells, [&](const VaryCell& one) { return cell(one); });
    result["regimes"] =
        json::list(solution_.regimes, [](const RegimeLosses& row) { return losses(row); });
    result["least_worst_loss"] = json::optional(solution_.least_worst_loss, name_of());
    result["best_on_average"] = json::optional(solution_.best_on_average, name_of());
    result["grid"] =
        json::optional(solution_.grid, [&](const GridAnswer& answer) { return grid(answer); });
    result["one_at_a_time"] =
        json::list(solution_.one_at_a_time, [&](const OneAtATime& row) { return span(row); });
    result["break_evens"] = json::list(solution_.break_evens, break_even);
    result["assumed"] = json::assumptions(scenario_.assumed);
    return result;
  }

 private:
  std::function<Value(std::size_t)> name_of() const {
    return [this](std::size_t place) { return Value(solution_.regimes[place].name); };
  }

  Value price_set(const PriceScenario& prices) const {
    Value by_product = Value::object();
    for (std::size_t i = 0; i < prices.stumpage.size(); ++i) {
      by_product[scenario_.products[i].name] = json::number(prices.stumpage[i].in(dollars_per_ton));
    }
    return {{"name", prices.name},
            {"stumpage_usd_per_ton", std::move(by_product)},
            {"weight", json::number(prices.weight)}};
  }

  // PLAN, or null where no regime is left.
  Value plan(const VaryAnswer& answer) const {
    if (!answer.best) return nullptr;
    static const std::vector<OtherTimber> none;
    std::optional<MoneyPerAcre> lev;
    if (answer.successor) lev = answer.successor->value.objective;
    const json::RegimeContext context{scenario_.products, none, solution_.standing,
                                      scenario_.hazard.active(), lev};
    return json::plan(
        {answer.best->regime, answer.best->value,
         solution_.standing ? lev.value_or(MoneyPerAcre()) : answer.best->value.objective,
         answer.after_tax},
        context);
  }

  Value cell(const VaryCell& one) const {
    Value object{{"real_discount_rate", json::number(one.rate.per_year())},
                 {"price_scenario", solution_.price_scenarios[one.price_scenario].name},
                 {"best", plan(one.answer)}};
    if (one.answer.best) {
      object["certificate"] = {{"gap_usd_ac", json::number(0.0)}};
      if (one.answer.after_tax) {
        object["certificate"]["after_tax"] = {{"gap_usd_ac", nullptr},
                                              {"reason", "the plan is sought before tax"}};
      }
    } else {
      object["certificate"] = nullptr;
      object["reason"] = one.answer.reason;
    }
    return object;
  }

  static Value money(const std::optional<MoneyPerAcre>& amount) {
    return json::optional(amount, json::usd_ac);
  }

  static Value money_of(const Losses& losses) {
    return {{"loss_usd_ac", json::list(losses.loss, money)},
            {"worst_loss_usd_ac", money(losses.worst)},
            {"mean_loss_usd_ac", money(losses.mean)}};
  }

  static Value losses(const RegimeLosses& row) {
    Value object{{"name", row.name}, {"plan", json::decisions(row.regime)}};
    object.update(money_of(row));
    if (row.after_tax) object["after_tax"] = money_of(*row.after_tax);
    return object;
  }

  static Value axis(const ParameterValues& values) {
    return {{"parameter", values.parameter.name},
            {"relative", values.parameter.is_relative()},
            {"values", json::list(values.values, json::number)}};
  }

  Value grid(const GridAnswer& answer) const {
    const auto rows = [&](auto write) {
      return json::list(answer.cells,
                        [&](const std::vector<VaryAnswer>& row) { return json::list(row, write); });
    };
    Value object{{"x", axis(answer.question.x)},
                 {"y", axis(answer.question.y)},
                 {"value_usd_ac", rows([](const VaryAnswer& cell) { return money(cell.value()); })},
                 {"plan", rows([this](const VaryAnswer& cell) { return plan(cell); })}};
    if (scenario_.tax) {
      object["after_tax"] = {{"value_usd_ac", rows([](const VaryAnswer& cell) {
                                return money(cell.value_after_tax());
                              })}};
    }
    return object;
  }

  static Value money_of(const OneAtATime& row) {
    return {{"plan_held_usd_ac", json::list(row.plan_held, money)},
            {"reoptimised_usd_ac",
             json::list(row.reoptimised,
                        [](const VaryAnswer& answer) { return money(answer.value()); })},
            {"swing_usd_ac", money(row.swing())}};
  }

  static Value money_after_tax(const OneAtATime& row) {
    return {{"plan_held_usd_ac", json::list(row.plan_held_after_tax, money)},
            {"reoptimised_usd_ac",
             json::list(row.reoptimised,
                        [](const VaryAnswer& answer) { return money(answer.value_after_tax()); })},
            {"swing_usd_ac", money(row.swing_after_tax())}};
  }

  Value span(const OneAtATime& row) const {
    Value object{{"parameter", row.span.parameter.name},
                 {"relative", row.span.parameter.is_relative()},
                 {"low", json::number(row.span.low)},
                 {"high", json::number(row.span.high)}};
    object.update(money_of(row));
    if (scenario_.tax) object["after_tax"] = money_after_tax(row);
    object["plan_changes"] = row.plan_changes[0] || row.plan_changes[1];
    object["plan_changes_at_end"] = {row.plan_changes[0], row.plan_changes[1]};
    object["plan_changes_from"] = json::list(row.changes_at, [](const std::optional<double>& at) {
      return json::optional(at, json::number);
    });
    object["plans"] =
        json::list(row.reoptimised, [this](const VaryAnswer& answer) { return plan(answer); });
    return object;
  }

  static Value pair(const std::array<double, 2>& ends) {
    return {json::number(ends[0]), json::number(ends[1])};
  }

  // Where it turns: of a break-even, before tax or after it.
  template <class Turning>
  static Value turning(const Turning& entry) {
    return {{"value", json::optional(entry.value, json::number)},
            {"bracket", json::optional(entry.bracket, pair)},
            {"reason", entry.reason.empty() ? Value(nullptr) : Value(entry.reason)}};
  }

  static Value break_even(const BreakEven& entry) {
    Value object{{"what", entry.what}, {"parameter", entry.parameter}, {"unit", entry.unit}};
    object.update(turning(entry));
    object["searched"] = pair(entry.searched);
    if (entry.after_tax) object["after_tax"] = turning(*entry.after_tax);
    return object;
  }

  const Scenario& scenario_;
  const VarySolution& solution_;
};

}  // namespace

std::string vary_json(const Scenario& scenario, const VarySolution& solution) {
  return json::result_text(VaryJson(scenario, solution).result());
}

}  // namespace staddle
