// SPDX-License-Identifier: GPL-3.0-or-later
#include "advise/best_after_tax.h"

#include <algorithm>

#include "advise/tables.h"
#include "staddle/base/tolerance.h"
#include "staddle/optimise/regime_pool.h"

namespace staddle {
namespace {

// What a basis saves depends on all cuts before, so its regimes are valued one by one: no
// more than so many, which takes about half a second.
constexpr double most_regimes_valued = 1e6;

double usd(MoneyPerAcre money) { return money.in(dollars_per_acre); }

class TaxedSearch {
 public:
  TaxedSearch(const Scene& scene, const AfterTax& tax, const StandOptions& options)
      : scene_(scene), tax_(tax), taxed_(scene.stand) {
    options_.method = options.method;
    options_.stop = options.stop;
    options_.windows = true;
    taxed_.stand_case = tax.stand_case();
  }

  BestAfterTax search() {
    const bool one_by_one = taxed_.stand_case.basis.has_value();
    if (one_by_one && RegimePool::lattice_regimes(taxed_) > most_regimes_valued) {
      return best_of_some();
    }
    const StandSolution solution = solve(taxed_, options_);
    const bool found = solution.status != StandSolution::Status::no_regime;  // not stopped
    return {plan(found ? solution.best.regime : scene_.best().regime),
            solution.near_best.value_or(NearBest{}), solution.certificate};
  }

 private:
  Plan plan(const Regime& regime) const {
    return plan_of(scene_, {regime, evaluate(scene_.stand.stand_case, regime)});
  }

  // The best before tax, and the best without the basis of every number of thinnings and
  // final age, priced with it.
  BestAfterTax best_of_some() {
    taxed_.stand_case = tax_.without_basis();
    options_.by_count = true;
    const StandSolution without = solve(taxed_, options_);
    offer(scene_.best().regime);
    offer(without);
    options_.windows = false;
    const DecisionLattice whole = taxed_.lattice;
    for (int at = whole.final_from.whole(); at <= whole.final_to.whole(); ++at) {
      taxed_.lattice.final_from = taxed_.lattice.final_to = age(at);
      offer(solve(taxed_, options_));
    }
    Certificate certificate = without.certificate;
    certificate.gap +=
        std::max(MoneyPerAcre(), without.best.value.objective + most_relief(whole) - most_);
    return {plan(*best_), without.near_best.value_or(NearBest{}), certificate};
  }

  void offer(const StandSolution& solution) {
    if (solution.status == StandSolution::Status::no_regime) return;
    for (const auto& priced : solution.by_count) {
      if (priced) offer(priced->regime);
    }
  }

  void offer(const Regime& regime) {
    const MoneyPerAcre value = tax_.value(regime).objective;
    if (best_ && (value <= most_ || tolerance::values_tie(usd(most_), usd(value)))) return;
    best_ = regime;
    most_ = value;
  }

  // No regime's objective gains more by the basis than if it were used up at once, on bare
  // land by every rotation, the shortest after the other.
  MoneyPerAcre most_relief(const DecisionLattice& lattice) const {
    const StandCase& stand = tax_.stand_case();
    const MoneyPerAcre saves = stand.basis->saves;
    if (stand.standing) return saves;
    const Years shortest = stand.hazard.active() ? years(1) : lattice.final_from - stand.present();
    const Years delay = years(stand.costs.regeneration_delay_yr);
    return saves / (1.0 - stand.costs.rate.discount_factor(shortest + delay));
  }

  const Scene& scene_;
  const AfterTax& tax_;
  StandProblem taxed_;
  StandOptions options_;
  std::optional<Regime> best_;
  MoneyPerAcre most_;
};

// Tables of fixed regimes, compared after tax.
BestAfterTax best_of_tables(const AdviseProblem& problem, const Scene& scene) {
  AdviseProblem taxed = problem;
  for (TabledChoice& choice : taxed.tabled) {
    choice.problem.stand_case = after_tax(scene, choice.problem.stand_case).stand_case();
  }
  const Scene found = compare_tables(taxed);
  const StandCase& stand = problem.tabled[found.table].problem.stand_case;
  const Regime& regime = found.best().regime;
  return {plan_of(scene, {regime, evaluate(stand, regime)}, stand), *found.solution.near_best,
          found.solution.certificate};
}

}  // namespace

BestAfterTax best_after_tax(const AdviseProblem& problem, const Scene& scene, const AfterTax& tax,
                            const StandOptions& options) {
  if (!problem.tabled.empty()) return best_of_tables(problem, scene);
  return TaxedSearch(scene, tax, options).search();
}

}  // namespace staddle
