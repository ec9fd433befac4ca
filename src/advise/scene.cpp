// SPDX-License-Identifier: GPL-3.0-or-later
#include "advise/scene.h"

#include <algorithm>
#include <cmath>

#include "advise/tables.h"
#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

const std::string of_the_successor = "of the stand planted after the harvest: ";

// What is done in the present year.
enum class Action { nothing, thinning, harvest };

Action action_now(const Regime& regime, Age present) {
  if (regime.final_harvest == present) return Action::harvest;
  if (!regime.thinnings.empty() && regime.thinnings.front().at == present) return Action::thinning;
  return Action::nothing;
}

bool within_two_years(Age a, Age b) {
  constexpr double close_yr = 2.0;
  return std::fabs((a - b).in(years)) <= close_yr;
}

// What tax does to the land that the stand leaves.
void add_tax(const AdviseProblem& problem, Scene& scene) {
  if (!problem.tax) return;
  scene.tax = SceneTax{*problem.tax, {}, std::nullopt};
  if (!scene.stand.stand_case.standing) return;
  if (scene.successor_lev()) {
    const AfterTax successor(problem.successor->stand_case, *problem.tax,
                             problem.successor->acres);
    scene.tax->successor_lev = successor.value(scene.successor->best.regime).objective;
  }
  scene.tax->land_value = problem.land_value(scene.tax->successor_lev);
}

}  // namespace

std::optional<MoneyPerAcre> Scene::successor_lev() const {
  if (!successor || successor->status == StandSolution::Status::no_regime) return std::nullopt;
  return successor->best.value.objective;
}

Scene prepare(const AdviseProblem& problem, const StandOptions& options) {
  Scene scene{problem.stand, std::nullopt, {}};
  if (!problem.stand.stand_case.standing) {
    add_tax(problem, scene);
    return scene;
  }
  if (problem.successor) {
    StandOptions plain;
    plain.method = options.method;
    plain.stop = options.stop;
    scene.successor = solve(*problem.successor, plain);
  }
  if (scene.successor && !scene.successor_lev()) return scene;
  scene.stand.stand_case.land_value = problem.land_value(scene.successor_lev());
  add_tax(problem, scene);
  return scene;
}

const StandCase& case_for_plan_of(const Scene& plan, const AdviseProblem& problem,
                                  const Scene& circumstances) {
  return problem.tabled.empty() ? circumstances.stand.stand_case
                                : problem.tabled[plan.table].problem.stand_case;
}

std::optional<std::string> why_no_plan(const AdviseProblem& problem) {
  if (!problem.tabled.empty()) {
    const bool any = std::ranges::any_of(
        problem.tabled, [](const TabledChoice& choice) { return !choice.final_ages.empty(); });
    return any ? std::nullopt : std::optional<std::string>(no_table_may_end);
  }
  if (problem.successor) {
    if (const auto reason = no_final_harvest_age(*problem.successor)) {
      return of_the_successor + *reason;
    }
  }
  return no_final_harvest_age(problem.stand);
}

Scene solve_scene(const AdviseProblem& problem, const StandOptions& options) {
  if (!problem.tabled.empty()) {
    Scene scene = compare_tables(problem);
    add_tax(problem, scene);
    return scene;
  }
  Scene scene = prepare(problem, options);
  const bool successor_fails =
      scene.successor && scene.successor->status == StandSolution::Status::no_regime;
  if (successor_fails) {
    scene.solution.reason = of_the_successor + scene.successor->reason;
    return scene;
  }
  scene.solution = solve(scene.stand, options);
  return scene;
}

Plan plan_of(const Scene& scene, const PricedRegime& priced, const StandCase& stand_case) {
  Plan plan{priced.regime, priced.value, priced.value.objective};
  const bool standing = stand_case.standing.has_value();
  if (standing) plan.land_expectation_value = scene.successor_lev().value_or(MoneyPerAcre());
  if (scene.tax) {
    const RegimeValue value = after_tax(scene, stand_case).value(priced.regime);
    plan.after_tax = PlanAfterTax{
        value, standing ? scene.tax->successor_lev : std::optional(value.objective)};
  }
  return plan;
}

Plan plan_of(const Scene& scene, const PricedRegime& priced) {
  return plan_of(scene, priced, scene.stand.stand_case);
}

AfterTax after_tax(const Scene& scene, const StandCase& stand_case) {
  require(scene.tax.has_value(), "after tax asks for tax rules");
  return AfterTax(stand_case, scene.tax->rules, scene.stand.acres, scene.tax->land_value);
}

bool same_advice(const Regime& a, const Regime& b, Age present) {
  constexpr double close_share = 0.05;
  const Action action = action_now(a, present);
  if (action != action_now(b, present)) return false;
  if (action == Action::thinning &&
      std::fabs(a.thinnings.front().removal_fraction - b.thinnings.front().removal_fraction) >
          close_share + tolerance::limit_slack) {
    return false;
  }
  if (a.thinnings.size() != b.thinnings.size()) return false;
  for (std::size_t i = 0; i < a.thinnings.size(); ++i) {
    if (!within_two_years(a.thinnings[i].at, b.thinnings[i].at)) return false;
  }
  return within_two_years(a.final_harvest, b.final_harvest);
}

}  // namespace staddle
