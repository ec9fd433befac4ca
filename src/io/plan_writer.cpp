// SPDX-License-Identifier: GPL-3.0-or-later
#include "io/plan_writer.h"

#include <algorithm>

namespace staddle::json {
namespace {

// The money of a regime that every form of it shows.
void add_value(Value& object, const RegimeValue& value, const RegimeContext& context) {
  object["land_expectation_value_usd_ac"] =
      context.standing ? optional(context.successor_lev, usd_ac) : usd_ac(value.objective);
  object["forest_value_usd_ac"] = context.standing ? usd_ac(value.objective) : Value(nullptr);
  object["net_present_value_usd_ac"] = usd_ac(value.net_present_value);
}

Value value_after_tax(const RegimeValue& value, std::optional<MoneyPerAcre> successor_lev,
                      bool standing) {
  return {{"land_expectation_value_usd_ac",
           standing ? optional(successor_lev, usd_ac) : usd_ac(value.objective)},
          {"forest_value_usd_ac", standing ? usd_ac(value.objective) : Value(nullptr)},
          {"net_present_value_usd_ac", usd_ac(value.net_present_value)}};
}

Value cash_line(const CashFlowLine& line) {
  return {{"age_yr", whole_age(line.at)}, {"what", line.what}, {"usd_ac", usd_ac(line.amount)}};
}

bool same_line(const CashFlowLine& a, const CashFlowLine& b) {
  return a.at == b.at && a.what == b.what;
}

// Line by line before and after tax. Both are in the order of time, but a line that comes
// to nothing is left out: relief where nothing is earned, or a cost deducted whole.
Value cash_flow(const RegimeReport& report, const RegimeReport& after) {
  Value lines = Value::array();
  const auto add = [&](const CashFlowLine& line, MoneyPerAcre before, MoneyPerAcre left) {
    lines.push_back(cash_line({line.at, line.what, before}));
    lines.back()["after_tax"] = {{"usd_ac", usd_ac(left)}};
  };
  auto taxed = after.cash_flow.begin();
  for (auto line = report.cash_flow.begin(); line != report.cash_flow.end(); ++line) {
    const auto its_own = std::find_if(taxed, after.cash_flow.end(), [&](const CashFlowLine& other) {
      return same_line(other, *line);
    });
    if (its_own == after.cash_flow.end()) {
      add(*line, line->amount, MoneyPerAcre());
      continue;
    }
    for (; taxed != its_own; ++taxed) add(*taxed, MoneyPerAcre(), taxed->amount);
    add(*line, line->amount, taxed->amount);
    ++taxed;
  }
  for (; taxed != after.cash_flow.end(); ++taxed) add(*taxed, MoneyPerAcre(), taxed->amount);
  return lines;
}

// The money of a regime after tax, put into the object that tells it before tax.
void add_after_tax(Value& object, const RegimeReport& report, const RegimeReport& after,
                   const RegimeContext& context) {
  Value& thinnings = object["thinnings"];
  for (std::size_t i = 0; i < after.thinnings.size(); ++i) {
    thinnings[i]["after_tax"] = {{"revenue_usd_ac", usd_ac(after.thinnings[i].revenue)}};
  }
  object["final_harvest"]["after_tax"] = {{"revenue_usd_ac", usd_ac(after.final_harvest.revenue)}};
  object["cash_flow"] = cash_flow(report, after);
  Value money = value_after_tax(after.value, context.successor_lev_after_tax, context.standing);
  money["equal_annual_equivalent_usd_ac"] = usd_ac(after.equal_annual_equivalent);
  object["after_tax"] = std::move(money);
}

Value thinning(const ThinningRecord& record, const RegimeContext& context) {
  Value object{{"age_yr", whole_age(record.at)},
               {"removal_fraction", number(record.removal_fraction)},
               {"tons_ac", tons_by_product(context.products, record.tons)},
               {"revenue_usd_ac", usd_ac(record.revenue)}};
  if (context.hazard) object["share_standing"] = number(record.share_standing);
  if (record.cuts_nothing) object["cuts_nothing"] = true;
  object["before"] = measures(record.before);
  object["after"] = measures(record.after);
  return object;
}

Value final_harvest(const HarvestRecord& record, const RegimeContext& context) {
  Value object{{"tons_ac", tons_by_product(context.products, record.tons)}};
  if (!record.other_tons.empty()) {
    require(record.other_tons.size() == context.other_timber.size(),
            "one yield belongs to each other timber");
    Value other = Value::array();
    for (std::size_t i = 0; i < record.other_tons.size(); ++i) {
      other.push_back({{"what", context.other_timber[i].what},
                       {"tons_ac", number(record.other_tons[i].in(tons_per_acre))}});
    }
    object["other_timber"] = std::move(other);
  }
  object["revenue_usd_ac"] = usd_ac(record.revenue);
  if (context.hazard) object["share_standing"] = number(record.share_standing);
  object["before"] = measures(record.before);
  return object;
}

void add_returns(Value& object, const RegimeReport& report) {
  object["equal_annual_equivalent_usd_ac"] = usd_ac(report.equal_annual_equivalent);
  object["benefit_cost_ratio"] = optional(report.benefit_cost_ratio, number);
  object["internal_rate_of_return"] = optional(report.internal_rate_of_return, number);
  object["internal_rates_of_return"] = list(report.internal_rates_of_return, number);
  object["internal_rate_of_return_reason"] = report.internal_rate_of_return_reason.empty()
                                                 ? Value(nullptr)
                                                 : Value(report.internal_rate_of_return_reason);
}

}  // namespace

RegimeContext context_of(const Scenario& scenario, const Advice& advice) {
  static const std::vector<OtherTimber> none;
  return {
      scenario.products,    scenario.is_standing() ? scenario.stand.standing->other_timber : none,
      advice.standing,      scenario.hazard.active(),
      advice.successor_lev, advice.after_tax ? advice.after_tax->successor_lev : std::nullopt};
}

Value decisions(const Regime& regime) {
  return {{"thinnings", list(regime.thinnings,
                             [](const Thinning& thinning) {
                               return Value{
                                   {"age_yr", whole_age(thinning.at)},
                                   {"removal_fraction", number(thinning.removal_fraction)}};
                             })},
          {"final_harvest_age_yr", whole_age(regime.final_harvest)}};
}

Value plan(const Plan& plan, const RegimeContext& context) {
  Value object = decisions(plan.regime);
  add_value(object, plan.value, context);
  if (plan.after_tax) {
    object["after_tax"] = value_after_tax(plan.after_tax->value,
                                          plan.after_tax->land_expectation_value, context.standing);
  }
  return object;
}

Value third_instead(const std::optional<ThirdInstead>& third, const RegimeContext& context,
                    const std::optional<ThirdInstead>* after_tax) {
  if (!third) return nullptr;
  const auto money = [](const ThirdInstead& lighter) {
    return Value{{"cost_usd_ac", usd_ac(lighter.cost)},
                 {"loss_saved_usd_ac", usd_ac(lighter.loss_saved)}};
  };
  Value object{{"best", plan(third->best, context)}};
  object.update(money(*third));
  if (after_tax != nullptr && *after_tax) object["after_tax"] = money(**after_tax);
  return object;
}

Value regime(const RegimeReport& report, const RegimeContext& context,
             const RegimeReport* after_tax) {
  Value object{
      {"thinnings", list(report.thinnings,
                         [&](const ThinningRecord& record) { return thinning(record, context); })},
      {"final_harvest_age_yr", whole_age(report.final_harvest_age)},
      {"final_harvest", final_harvest(report.final_harvest, context)}};
  add_value(object, report.value, context);
  add_returns(object, report);
  object["cash_flow"] = list(report.cash_flow, cash_line);
  if (after_tax != nullptr) add_after_tax(object, report, *after_tax, context);
  return object;
}

}  // namespace staddle::json
