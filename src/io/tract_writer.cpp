// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/tract_writer.h"

#include <cmath>

#include "io/value_writer.h"
#include "report/tract_tables.h"
#include "staddle/signs/cautions.h"

namespace staddle {
namespace {

using json::Value;

Value usd(Money amount) { return json::number(amount.in(dollars)); }

const char* name_of(TractSolution::Status status) {
  switch (status) {
    case TractSolution::Status::optimal:
      return "optimal";
    case TractSolution::Status::limit_reached:
      return "limit reached";
    case TractSolution::Status::infeasible:
      break;
  }
  return "infeasible";
}

// Text that may be absent.
Value text_or_null(const std::string& text) { return text.empty() ? Value(nullptr) : Value(text); }

// A period from 1; 0 stands for the whole plan.
Value period_or_null(int period) { return period == 0 ? Value(nullptr) : Value(period); }

Value decisions_of(const RegimeReport& report) {
  return {{"thinnings", json::list(report.thinnings,
                                   [](const ThinningRecord& cut) {
                                     return Value{
                                         {"age_yr", json::whole_age(cut.at)},
                                         {"removal_fraction", json::number(cut.removal_fraction)}};
                                   })},
          {"final_harvest_age_yr", json::whole_age(report.final_harvest_age)}};
}

class TractWriter {
 public:
  TractWriter(const TractFile& tract, const TractSolution& solution)
      : tract_(tract), solution_(solution) {}

  Value write() const {
    Value result{
        {"format", "staddle-tract-plan/1"},
        {"title", tract_.title},
        {"calendar_year", json::optional(tract_.present_year,
                                         [](CalendarYear year) { return Value(year.whole()); })},
        {"status", name_of(solution_.status)},
        {"message", solution_.message},
        {"keeps_limits", solution_.keeps_limits},
        {"present_value_usd", usd(solution_.present_value)},
        {"bound_usd", bound()},
        {"gap_fraction", gap()},
        {"max_gap_asked", json::number(solution_.max_gap_asked)},
        {"unlimited_present_value_usd", usd(solution_.unlimited_present_value)},
        {"split_present_value_usd", usd(solution_.split_present_value)},
        {"starting_value_usd", usd(solution_.starting_value)},
        {"ending_value_usd", usd(solution_.ending_value)}};
    result["stands"] = json::list(solution_.stands,
                                  [this](const StandSchedule& stand) { return schedule(stand); });
    result["periods"] =
        json::list(solution_.periods, [this](const TractPeriod& span) { return period(span); });
    result["years"] =
        json::list(solution_.years, [this](const TractPeriod& span) { return period(span); });
    result["actions"] =
        json::list(solution_.actions, [this](const TractAction& job) { return action(job); });
    result["limit_costs"] = json::list(solution_.limit_costs, limit_cost);
    result["conflicts"] = json::list(solution_.conflicts, conflict);
    result["rounds"] = solution_.rounds;
    result["columns"] = solution_.columns;
    result["cautions"] = standing_cautions();
    result["assumed"] = json::assumptions(tract_.assumed);
    for (const std::string& sentence : solution_.assumed) {
      result["assumed"].push_back({{"pointer", ""}, {"value", nullptr}, {"why", sentence}});
    }
    result["questions"] = tract_.questions;
    return result;
  }

 private:
  // null where a search was stopped before anything was known.
  Value bound() const {
    const double value = solution_.bound.in(dollars);
    return solution_.stands.empty() || !std::isfinite(value) ? Value(nullptr) : json::number(value);
  }

  // null where the plan breaks limits that another might keep.
  Value gap() const {
    const bool meant =
        solution_.keeps_limits || solution_.status == TractSolution::Status::infeasible;
    return meant && !bound().is_null() ? json::number(solution_.gap_fraction) : Value(nullptr);
  }

  static Value schedule(const StandSchedule& stand) {
    return {{"name", stand.name},
            {"regimes", json::list(stand.regimes,
                                   [&](const RegimeShare& share) { return regime(stand, share); })},
            {"unlimited",
             {{"thinnings", json::list(stand.unlimited.thinnings,
                                       [](const Thinning& cut) {
                                         return Value{{"age_yr", json::whole_age(cut.at)},
                                                      {"removal_fraction",
                                                       json::number(cut.removal_fraction)}};
                                       })},
              {"final_harvest_age_yr", json::whole_age(stand.unlimited.final_harvest)},
              {"present_value_usd_ac", json::usd_ac(stand.unlimited_value)}}}};
  }

  static Value regime(const StandSchedule& stand, const RegimeShare& share) {
    Value plan = decisions_of(share.report);
    plan["land_expectation_value_usd_ac"] =
        stand.planting_known ? json::usd_ac(share.land_expectation_value) : Value(nullptr);
    plan["forest_value_usd_ac"] = json::optional(share.forest_value, json::usd_ac);
    plan["net_present_value_usd_ac"] = json::usd_ac(share.report.value.net_present_value);
    return {{"acres", json::number(share.acres.in(acres))},
            {"present_value_usd_ac", json::usd_ac(share.present_value)},
            {"plan", std::move(plan)}};
  }

  Value tons_of(const std::vector<Weight>& tons_by_product) const {
    Value object = Value::object();
    for (std::size_t i = 0; i < tons_by_product.size(); ++i) {
      object[solution_.products.at(i)] = json::number(tons_by_product[i].in(tons));
    }
    return object;
  }

  Value period(const TractPeriod& span) const {
    Value object{{"from_year", span.from_year},
                 {"to_year", span.to_year},
                 {"income_usd", usd(span.income)},
                 {"cost_usd", usd(span.cost)},
                 {"establishment_usd", usd(span.establishment)},
                 {"final_harvest_acres", json::number(span.final_harvest_acres.in(acres))},
                 {"tons", tons_of(span.tons)}};
    if (tract_.plan.open_stand) object["open_acres"] = json::number(span.open_acres.in(acres));
    return object;
  }

  Value action(const TractAction& job) const {
    Value object{{"year", job.year},
                 {"stand", solution_.stands.at(job.stand).name},
                 {"what", name_of(job)},
                 {"of_successor", job.successor},
                 {"acres", json::number(job.acres.in(acres))}};
    if (job.kind == TractAction::Kind::thinning) {
      object["removal_fraction"] = json::number(job.removal_fraction);
    }
    object["tons"] = tons_of(job.tons);
    object["usd"] = usd(job.money);
    return object;
  }

  static Value limit_cost(const LimitCost& cost) {
    return {{"limit", cost.limit},
            {"of", text_or_null(cost.of)},
            {"period", period_or_null(cost.period)},
            {"from_year", cost.from_year},
            {"to_year", cost.to_year},
            {"shadow_price", json::number(cost.shadow_price)},
            {"unit", cost.unit},
            {"text", cost.text}};
  }

  static Value conflict(const LimitConflict& broken) {
    return {{"limit", broken.limit},
            {"of", text_or_null(broken.of)},
            {"period", period_or_null(broken.period)},
            {"from_year", broken.from_year},
            {"to_year", broken.to_year},
            {"asked", json::number(broken.asked)},
            {"most_possible", json::number(broken.most_possible)},
            {"unit", broken.unit},
            {"text", broken.text}};
  }

  const TractFile& tract_;
  const TractSolution& solution_;
};

}  // namespace

std::string tract_json(const TractFile& tract, const TractSolution& solution) {
  return json::result_text(TractWriter(tract, solution).write());
}

}  // namespace staddle
