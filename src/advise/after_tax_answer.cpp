// SPDX-License-Identifier: GPL-3.0-or-later
#include "advise/after_tax_answer.h"

#include "advise/best_after_tax.h"
#include "advise/side_questions.h"

namespace staddle {
namespace {

class TaxedAnswer {
 public:
  TaxedAnswer(const AdviseProblem& problem, const Scene& scene, const Advice& advice)
      : problem_(problem),
        scene_(scene),
        advice_(advice),
        tax_(after_tax(scene, scene.stand.stand_case)) {}

  AdviceAfterTax answer(const StandOptions& options) {
    answer_.best = told_after_tax(advice_.best, tax_);
    price_successor();
    price_other_regimes();
    price_guards();
    if (advice_.standing) judge_standing_stand();
    price_storms();
    BestAfterTax best = best_after_tax(problem_, scene_, tax_, options);
    answer_.best_after_tax = std::move(best.plan);
    answer_.near_best = best.near_best;
    answer_.certificate = best.certificate;
    return std::move(answer_);
  }

 private:
  MoneyPerAcre best_value() const { return answer_.best.value.objective; }
  MoneyPerAcre loss_of(const Plan& plan) const {
    return best_value() - plan.after_tax->value.objective;
  }

  void price_successor() {
    answer_.successor_lev = scene_.tax->successor_lev;
    answer_.land_value = scene_.tax->land_value;
    if (!advice_.successor) return;
    const AfterTax tax(problem_.successor->stand_case, scene_.tax->rules,
                       problem_.successor->acres);
    answer_.successor = told_after_tax(*advice_.successor, tax);
  }

  // Tables of fixed regimes each have a case of their own.
  RegimeReport told(const RegimeReport& report, std::size_t table) const {
    if (problem_.tabled.empty()) return told_after_tax(report, tax_);
    return told_after_tax(report, after_tax(scene_, problem_.tabled[table].problem.stand_case));
  }

  void price_other_regimes() {
    for (const StatedAnswer& regime : advice_.regimes) {
      answer_.regimes.push_back(told(regime.report, regime.table));
    }
    for (const Alternative& other : advice_.alternatives) {
      answer_.alternatives.push_back(told(other.report, other.table));
    }
    if (!advice_.standing && !advice_.alternatives.empty() &&
        advice_.alternatives.front().thinnings == 0) {
      answer_.advantage = best_value() - answer_.alternatives.front().value.objective;
    }
  }

  void price_guards() {
    for (const GuardCost& guard : advice_.guard_costs) {
      MoneyPerAcre cost;
      if (guard.otherwise) cost = -loss_of(*guard.otherwise);
      answer_.guard_costs.push_back(guard.is_exception() ? -cost : cost);
    }
  }

  void judge_standing_stand() {
    answer_.sell_today = sell_today();
    answer_.advantage = answer_.sell_today->loss_against_best;
    if (advice_.wait_five) answer_.wait_five_loss = loss_of(advice_.wait_five->plan);
    if (!advice_.sale_now) return;
    answer_.sale_now = sale_now(*advice_.sale_now);
    if (advice_.waiting_earns) {
      answer_.waiting_earns = best_value() - tax_.value(advice_.sale_now->plan).objective;
    }
  }

  SellToday sell_today() const {
    const StatedRegime now{"sell today", {}, scene_.stand.stand_case.present()};
    const RegimeReport report = tax_.report(now).value();
    SellToday sale;
    sale.timber = report.final_harvest.revenue;
    sale.land = report.value.objective - sale.timber;
    sale.loss_against_best = best_value() - report.value.objective;
    return sale;
  }

  // The same two plans, priced after tax.
  SaleNow sale_now(const SaleNow& before) const {
    SaleNow sale = before;
    const RegimeReport report = tax_.report(stated("now", before.plan)).value();
    sale.net_revenue = revenue_now(report);
    sale.refuse_below =
        sale.net_revenue - (report.value.objective - tax_.value(before.patient).objective);
    return sale;
  }

  void price_storms() {
    const StandCase stand = tax_.without_basis();
    const RegimeReport best = simulate(stand, stated("", advice_.best.regime())).value();
    if (advice_.third_instead) {
      const ThirdInstead& before = *advice_.third_instead;
      const RegimeReport lighter = simulate(stand, stated("", before.best.regime)).value();
      answer_.third_instead = ThirdInstead{
          before.best, loss_of(before.best),
          storm_loss_of_thinnings(stand, best) - storm_loss_of_thinnings(stand, lighter)};
    }
    if (!advice_.storm) return;
    answer_.blind_plan_loss = loss_of(advice_.storm->blind_plan);
    answer_.storms = storms_after_thinnings(stand, best);
  }

  const AdviseProblem& problem_;
  const Scene& scene_;
  const Advice& advice_;
  AfterTax tax_;
  AdviceAfterTax answer_;
};

}  // namespace

AdviceAfterTax answer_after_tax(const AdviseProblem& problem, const Scene& scene,
                                const Advice& advice, const StandOptions& options) {
  return TaxedAnswer(problem, scene, advice).answer(options);
}

}  // namespace staddle
