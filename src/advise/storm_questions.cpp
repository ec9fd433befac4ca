// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "advise/side_questions.h"
#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

constexpr double a_third = 1.0 / 3.0;

bool exceeds_a_third(const Regime& regime) {
  return std::any_of(regime.thinnings.begin(), regime.thinnings.end(),
                     [](const Thinning& thinning) {
                       return thinning.removal_fraction > a_third + tolerance::limit_slack;
                     });
}

}  // namespace

MoneyPerAcre storm_loss_of_thinnings(const StandCase& stand, const RegimeReport& plan) {
  MoneyPerAcre sum;
  for (const StormAfterThinning& storm : storms_after_thinnings(stand, plan)) {
    sum += storm.extra_expected_loss *
           stand.costs.rate.discount_factor(storm.at - stand.present());
  }
  return sum;
}

std::optional<ThirdInstead> third_instead(const AdviseProblem& problem, const Scene& scene,
                                          const RegimeReport& best, const StandOptions& options) {
  if (!exceeds_a_third(scene.best().regime)) return std::nullopt;
  const Scene lighter = solve_scene(changed(problem, [](StandProblem& p) {
    p.lattice.guards.max_removal_fraction = a_third;
    p.lattice.guards.dense_stand_now.reset();
  }), options);
  if (!lighter.solved()) return std::nullopt;
  const StandCase& stand = lighter.stand.stand_case;
  const RegimeReport report =
      simulate(stand, stated("at most a third", lighter.best().regime)).value();
  return ThirdInstead{plan_of(lighter, lighter.best()),
                      scene.best().value.objective - lighter.best().value.objective,
                      storm_loss_of_thinnings(scene.stand.stand_case, best) -
                          storm_loss_of_thinnings(stand, report)};
}

StormAnswer storm_answer(const AdviseProblem& problem, const Scene& scene,
                         const RegimeReport& best, const StandOptions& options) {
  StormAnswer answer;
  const StandCase& stand = scene.stand.stand_case;
  const Scene blind = solve_scene(
      changed(problem, [](StandProblem& p) { p.stand_case.hazard.perils.clear(); }), options);
  const StandCase& blind_case = case_for_plan_of(blind, problem, scene);
  const PricedRegime blind_priced{blind.best().regime, evaluate(blind_case, blind.best().regime)};
  answer.blind_plan = plan_of(scene, blind_priced, blind_case);
  answer.blind_plan_loss = scene.best().value.objective - blind_priced.value.objective;

  for (const std::optional<double> ratio :
       {std::optional(1.0), std::optional(1.5), std::optional<double>(), std::optional(6.0)}) {
    StormAnswer::OddsRow row{ratio, plan_of(scene, scene.best()), true};
    if (ratio) {
      const Scene other = solve_scene(changed(problem, [&](StandProblem& p) {
        p.stand_case.hazard = with_odds_ratio(p.stand_case.hazard, *ratio);
      }), options);
      row.best = plan_of(other, other.best());
      row.same_advice = same_advice(other.best().regime, scene.best().regime, stand.present());
    }
    answer.odds_ratios.push_back(row);
  }
  answer.thinnings = storms_after_thinnings(stand, best);
  return answer;
}

}  // namespace staddle
