// SPDX-License-Identifier: GPL-3.0-or-later
#include "advise/side_questions.h"

#include <algorithm>

namespace staddle {

std::vector<GuardCost> guard_costs(const AdviseProblem& problem, const Scene& scene,
                                   const StandOptions& options) {
  std::vector<GuardCost> costs;
  const Guards& guards = problem.stand.lattice.guards;
  const auto ask = [&](const char* guard, auto member, bool exception) {
    const AdviseProblem without =
        changed(problem, [&](StandProblem& stand) { (stand.lattice.guards.*member).reset(); });
    const Scene other = solve_scene(without, options);
    GuardCost cost{guard, dollars_per_acre(0), std::nullopt};
    if (other.solved()) {
      cost.cost = other.best().value.objective - scene.best().value.objective;
      if (exception) cost.cost = -cost.cost;
      cost.otherwise = plan_of(other, other.best());
    }
    costs.push_back(cost);
  };
  if (guards.max_removal_fraction)
    ask("max_removal_fraction", &Guards::max_removal_fraction, false);
  if (guards.dense_stand_now && guards.max_removal_fraction) {
    ask("dense_stand_now", &Guards::dense_stand_now, true);
  }
  if (guards.min_residual_basal_area) {
    ask("min_residual_basal_area_ft2_ac", &Guards::min_residual_basal_area, false);
  }
  if (guards.min_height) ask("min_height_ft", &Guards::min_height, false);
  if (guards.min_qmd) ask("min_qmd_in", &Guards::min_qmd, false);
  if (guards.min_live_crown_ratio) {
    ask("min_live_crown_ratio", &Guards::min_live_crown_ratio, false);
  }
  return costs;
}

std::vector<Survival> survivals(const AdviseProblem& problem, const Scene& scene,
                                const StandOptions& options) {
  std::vector<Survival> result;
  const auto ask = [&](const char* change, auto apply) {
    const AdviseProblem otherwise =
        changed(problem, [&](StandProblem& stand) { apply(stand.stand_case); });
    const Scene other = solve_scene(otherwise, options);
    Survival survival{change, std::nullopt, false, dollars_per_acre(0)};
    if (other.solved()) {
      survival.best = plan_of(other, other.best());
      survival.same_advice =
          same_advice(other.best().regime, scene.best().regime, scene.stand.stand_case.present());
      const RegimeReport kept = simulate(case_for_plan_of(scene, otherwise, other),
                                         stated("kept", scene.best().regime))
                                    .value();
      survival.kept_plan_loss = other.best().value.objective - kept.value.objective;
      survival.kept_plan_breaks = broken_limits(other.stand, kept);
      if (other.tax) {
        const StandCase& kept_case = case_for_plan_of(scene, otherwise, other);
        survival.kept_plan_loss_after_tax =
            survival.best->after_tax->value.objective -
            after_tax(other, kept_case).value(scene.best().regime).objective;
      }
    }
    result.push_back(survival);
  };
  const auto grow_by = [](double factor) {
    return [factor](StandCase& stand) { stand.growth_multiplier *= factor; };
  };
  const auto pay_by = [](double factor) {
    return [factor](StandCase& stand) {
      for (ProductPrice& price : stand.prices) price.stumpage = price.stumpage * factor;
      if (!stand.standing) return;
      for (OtherTimber& timber : stand.standing->other_timber) {
        timber.stumpage = timber.stumpage * factor;
      }
    };
  };
  ask("growth -15 %", grow_by(0.85));
  ask("growth +15 %", grow_by(1.15));
  ask("all prices -20 %", pay_by(0.80));
  ask("all prices +20 %", pay_by(1.20));
  return result;
}

std::optional<WaitFiveYears> wait_five_years(const Scene& scene, const StandOptions& options) {
  const Years wait = years(5);
  StandProblem waiting = scene.stand;
  const Age then = waiting.stand_case.present() + wait;
  if (then > waiting.stand_case.growth.last_age()) return std::nullopt;
  waiting.lattice.thinning_from = std::max(waiting.lattice.thinning_from, then);
  waiting.lattice.final_from = std::max(waiting.lattice.final_from, then);
  waiting.lattice.final_to = std::max(waiting.lattice.final_to, then);
  const StandSolution solution = solve(waiting, options);
  if (solution.status == StandSolution::Status::no_regime) return std::nullopt;
  WaitFiveYears answer{plan_of(scene, solution.best),
                       scene.best().value.objective - solution.best.value.objective,
                       {}};
  answer.then = grow_unthinned(waiting.stand_case, then).back().measures;
  return answer;
}

MoneyPerAcre revenue_now(const RegimeReport& plan) {
  return plan.thinnings.empty() ? plan.final_harvest.revenue : plan.thinnings.front().revenue;
}

std::optional<SaleNow> sale_now(const Scene& scene, const PricedRegime& plan, bool waits,
                                const StandOptions& options) {
  const StandCase& stand = scene.stand.stand_case;
  const RegimeReport report = simulate(stand, stated("now", plan.regime)).value();
  SaleNow sale;
  sale.plan = plan.regime;
  sale.net_revenue = revenue_now(report);
  MoneyPerAcre patience = scene.best().value.objective;
  sale.patient = scene.best().regime;
  if (!waits) {
    StandProblem later = scene.stand;
    const Age next = stand.present() + years(1);
    if (next > stand.growth.last_age()) return std::nullopt;
    later.lattice.thinning_from = std::max(later.lattice.thinning_from, next);
    later.lattice.final_from = std::max(later.lattice.final_from, next);
    later.lattice.final_to = std::max(later.lattice.final_to, next);
    const StandSolution solution = solve(later, options);
    if (solution.status == StandSolution::Status::no_regime) return std::nullopt;
    patience = solution.best.value.objective;
    sale.patient = solution.best.regime;
  }
  sale.refuse_below = sale.net_revenue - (plan.value.objective - patience);
  return sale;
}

SellToday sell_today(const Scene& scene) {
  const StandCase& stand = scene.stand.stand_case;
  const StatedRegime now{"sell today", {}, stand.present()};
  const RegimeReport report = simulate(stand, now).value();
  SellToday answer;
  answer.timber = report.final_harvest.revenue;
  answer.land = report.value.objective - answer.timber;
  answer.loss_against_best = scene.best().value.objective - report.value.objective;
  return answer;
}

}  // namespace staddle
