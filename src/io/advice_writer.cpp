// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/io/advice_writer.h"

#include "io/advice_value.h"
#include "io/plan_writer.h"
#include "io/proof_value_writer.h"
#include "io/ready_writer.h"
#include "io/storm_answer_writer.h"
#include "staddle/scenario/advise_problem.h"
#include "staddle/signs/cautions.h"

namespace staddle {
namespace {

using json::Value;

// Writes one answer, key by key.
class AdviceWriter {
 public:
  AdviceWriter(const Scenario& scenario, const Advice& advice)
      : scenario_(scenario), advice_(advice), context_(json::context_of(scenario, advice)) {}

  Value write() const {
    Value result{
        {"format", "staddle-advice/1"},
        {"title", scenario_.title},
        {"acres", json::number(scenario_.area.in(acres))},
        {"calendar_year",
         json::optional(scenario_.present_year, [](CalendarYear year) { return year.whole(); })},
        {"present_age_yr",
         scenario_.is_standing() ? json::whole_age(scenario_.stand.standing->at) : Value(nullptr)},
        {"objective", advice_.standing ? "forest_value" : "land_expectation_value"}};
    result["best"] = json::regime(advice_.best, context_, tax_ ? &tax_->best : nullptr);
    if (tax_) result["best_after_tax"] = json::plan(tax_->best_after_tax, context_);
    result["regimes"] = Value::array();
    for (std::size_t i = 0; i < advice_.regimes.size(); ++i) {
      result["regimes"].push_back(stated(advice_.regimes[i], after(&AdviceAfterTax::regimes, i)));
    }
    result["alternatives"] = Value::array();
    for (std::size_t i = 0; i < advice_.alternatives.size(); ++i) {
      result["alternatives"].push_back(
          alternative(advice_.alternatives[i], after(&AdviceAfterTax::alternatives, i)));
    }
    result["near_best"] = near_best(advice_.near_best);
    if (tax_) result["near_best"]["after_tax"] = near_best(tax_->near_best);
    result["guard_costs"] = guard_costs();
    result["certificate"] = certificate(advice_.certificate);
    if (tax_) result["certificate"]["after_tax"] = certificate(tax_->certificate);
    result["risk_notes"] = json::list(advice_.risk_notes, risk_note);
    result["survives"] = json::list(
        advice_.survives, [this](const Survival& survival) { return survives(survival); });
    result["ready"] = json::list(advice_.readiness.signs, json::sign);
    result["ready_judgement"] = advice_.readiness_judgement;
    result["cautions"] = standing_cautions();
    result["assumed"] = json::assumptions(assumptions_of(scenario_, advice_));
    result["questions"] = scenario_.questions;
    result["model"] = model();
    if (advice_.standing) add_standing_stand(result);
    result["advantage_usd_ac"] = json::usd_ac(advice_.advantage);
    result["third_instead"] =
        json::third_instead(advice_.third_instead, context_, tax_ ? &tax_->third_instead : nullptr);
    if (advice_.plots) result["plots"] = plots(*advice_.plots);
    if (advice_.storm)
      result["storm"] = json::storm_answer(*advice_.storm, context_, tax_ ? &*tax_ : nullptr);
    if (tax_) result["after_tax"] = money_after_tax();
    return result;
  }

 private:
  // The name and the loss stand before what every regime shows.
  Value told(Value head, const RegimeReport& report, const RegimeReport* after_tax) const {
    head.update(json::regime(report, context_, after_tax));
    if (after_tax != nullptr) {
      head["after_tax"]["loss_against_best_usd_ac"] =
          json::usd_ac(tax_->best.value.objective - after_tax->value.objective);
    }
    return head;
  }

  // The regime at a place of a list, after tax; nothing where tax is not asked for.
  const RegimeReport* after(std::vector<RegimeReport> AdviceAfterTax::*list,
                            std::size_t place) const {
    return tax_ && place < (*tax_.*list).size() ? &(*tax_.*list)[place] : nullptr;
  }

  // What the answer itself says of money, after tax.
  Value money_after_tax() const {
    Value money{{"advantage_usd_ac", json::usd_ac(tax_->advantage)}};
    if (!advice_.standing) return money;
    money["land_value_usd_ac"] = json::usd_ac(tax_->land_value);
    money["waiting_earns_usd_ac"] = json::optional(tax_->waiting_earns, json::usd_ac);
    return money;
  }

  Value stated(const StatedAnswer& answer, const RegimeReport* after_tax) const {
    Value object = told({{"name", answer.report.name},
                         {"loss_against_best_usd_ac", json::usd_ac(answer.loss_against_best)}},
                        answer.report, after_tax);
    object["breaks"] = json::list(answer.breaks, [](const BrokenLimit& limit) {
      return Value{{"limit", limit.limit},
                   {"value", json::number(limit.value)},
                   {"allowed", json::number(limit.allowed)}};
    });
    return object;
  }

  Value alternative(const Alternative& other, const RegimeReport* after_tax) const {
    return told({{"thinning_count", other.thinnings},
                 {"loss_against_best_usd_ac", json::usd_ac(other.loss_against_best)}},
                other.report, after_tax);
  }

  static Value near_best(const NearBest& near) {
    Value first(nullptr);
    if (near.first_thinning_low && near.first_thinning_high) {
      first = {json::whole_age(*near.first_thinning_low),
               json::whole_age(*near.first_thinning_high)};
    }
    return {{"tolerance_usd_ac", json::usd_ac(near.tolerance)},
            {"first_thinning_age_yr", std::move(first)},
            {"final_harvest_age_yr",
             {json::whole_age(near.final_harvest_low), json::whole_age(near.final_harvest_high)}}};
  }

  Value plan(const std::optional<Plan>& plan) const {
    return json::optional(plan, [this](const Plan& given) { return json::plan(given, context_); });
  }

  Value guard_costs() const {
    Value costs = Value::array();
    for (std::size_t i = 0; i < advice_.guard_costs.size(); ++i) {
      const GuardCost& guard = advice_.guard_costs[i];
      Value object{{"guard", guard.guard},
                   {"usd_ac", json::usd_ac(guard.cost)},
                   {"otherwise", plan(guard.otherwise)}};
      if (tax_) object["after_tax"] = {{"usd_ac", json::usd_ac(tax_->guard_costs[i])}};
      costs.push_back(std::move(object));
    }
    return costs;
  }

  static Value certificate(const Certificate& certificate) {
    return {{"lattice_regimes", json::count(certificate.lattice_regimes)},
            {"regimes_valued", certificate.regimes_valued},
            {"gap_usd_ac", json::usd_ac(certificate.gap)}};
  }

  static Value figures_of(const std::vector<std::pair<std::string, double>>& named) {
    Value figures = Value::object();
    for (const auto& [name, value] : named) figures[name] = json::number(value);
    return figures;
  }

  static Value risk_note(const RiskNote& note) {
    static constexpr const char* levels[] = {"low", "elevated", "high"};
    Value figures = figures_of(note.figures);
    if (!note.figures_after_tax.empty()) {
      figures["after_tax"] = figures_of(note.figures_after_tax);
    }
    return {{"topic", note.topic},
            {"level", levels[static_cast<std::size_t>(note.level)]},
            {"text", note.text},
            {"figures", std::move(figures)}};
  }

  Value survives(const Survival& survival) const {
    Value object{{"change", survival.change},
                 {"best", plan(survival.best)},
                 {"same_advice", survival.same_advice},
                 {"kept_plan_loss_usd_ac", json::usd_ac(survival.kept_plan_loss)}};
    if (survival.kept_plan_loss_after_tax) {
      object["after_tax"] = {
          {"kept_plan_loss_usd_ac", json::usd_ac(*survival.kept_plan_loss_after_tax)}};
    }
    return object;
  }

  Value plots(const PlotsAnswer& answer) const {
    const auto end = [this](const PlotsAnswer::End& given) {
      return Value{{"basal_area_ft2_ac", json::number(given.basal_area.in(square_feet_per_acre))},
                   {"best", plan(given.best)}};
    };
    return {
        {"low", end(answer.low)},
        {"high", end(answer.high)},
        {"same_advice", answer.same_advice},
        {"more_plots", json::optional(answer.more_plots, [](int more) { return Value(more); })}};
  }

  Value model() const {
    Value object;
    if (const auto* equations = std::get_if<EquationSet>(&scenario_.stand.source)) {
      object = {{"id", equations->id}, {"source", equations->source}};
    } else if (const auto* table = std::get_if<YieldTable>(&scenario_.stand.source)) {
      object = {{"id", "yield_table"}, {"source", table->file}};
    } else {
      std::string files;
      for (const auto& regime : std::get<std::vector<TabledRegime>>(scenario_.stand.source)) {
        files += (files.empty() ? "" : ", ") + regime.table.file;
      }
      object = {{"id", "yield_tables"}, {"source", files}};
    }
    object["outside_fitted_range"] = json::outside_ranges(advice_.outside_fitted_range);
    return object;
  }

  // What the text answer says of a standing stand besides.
  void add_standing_stand(Value& result) const {
    result["successor"] = json::optional(advice_.successor, [this](const RegimeReport& report) {
      return json::regime(report,
                          json::RegimeContext{scenario_.products, context_.other_timber, false,
                                              context_.hazard, std::nullopt},
                          tax_ && tax_->successor ? &*tax_->successor : nullptr);
    });
    result["land_value_usd_ac"] = json::usd_ac(advice_.land_value);
    const auto sold_today = [](const SellToday& sold) {
      return Value{{"timber_usd_ac", json::usd_ac(sold.timber)},
                   {"land_usd_ac", json::usd_ac(sold.land)},
                   {"loss_against_best_usd_ac", json::usd_ac(sold.loss_against_best)}};
    };
    result["sell_today"] = json::optional(advice_.sell_today, sold_today);
    if (tax_ && tax_->sell_today) result["sell_today"]["after_tax"] = sold_today(*tax_->sell_today);
    result["wait_five_years"] =
        json::optional(advice_.wait_five, [this](const WaitFiveYears& wait) {
          return Value{{"best", json::plan(wait.plan, context_)},
                       {"loss_against_best_usd_ac", json::usd_ac(wait.loss_against_best)},
                       {"then", json::measures(wait.then)}};
        });
    if (tax_ && tax_->wait_five_loss) {
      result["wait_five_years"]["after_tax"] = {
          {"loss_against_best_usd_ac", json::usd_ac(*tax_->wait_five_loss)}};
    }
    result["waiting_earns_usd_ac"] = json::optional(advice_.waiting_earns, json::usd_ac);
    result["sale_now"] = json::optional(advice_.sale_now, [](const SaleNow& sale) {
      Value object{{"regime", json::decisions(sale.plan)}};
      object.update(money_of(sale));
      return object;
    });
    if (tax_ && tax_->sale_now) result["sale_now"]["after_tax"] = money_of(*tax_->sale_now);
  }

  static Value money_of(const SaleNow& sale) {
    return {{"net_revenue_usd_ac", json::usd_ac(sale.net_revenue)},
            {"refuse_below_usd_ac", json::usd_ac(sale.refuse_below)}};
  }

  const Scenario& scenario_;
  const Advice& advice_;
  const json::RegimeContext context_;
  const std::optional<AdviceAfterTax>& tax_ = advice_.after_tax;
};

}  // namespace

Value json::advice(const Scenario& scenario, const Advice& advice) {
  return AdviceWriter(scenario, advice).write();
}

std::string advice_json(const Scenario& scenario, const Advice& advice, const AnswerProof* proof) {
  Value result = json::advice(scenario, advice);
  if (proof != nullptr) result["proof"] = json::answer_proof(*proof);
  return json::result_text(result);
}

}  // namespace staddle
