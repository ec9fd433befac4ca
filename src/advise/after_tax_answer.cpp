// SPDX-License-Identifier: GPL-3.0-or-later
#include "advise/after_tax_answer.h"

#include <algorithm>

#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

class TaxedAnswer {
 public:
  TaxedAnswer(const AdviseProblem& problem, const Scene& scene, const Advice& advice,
              const StandOptions& options)
      : problem_(problem),
        scene_(scene),
        advice_(advice),
        tax_(after_tax(scene, scene.stand.stand_case)) {
    options_.method = options.method;
    options_.stop = options.stop;
    options_.by_count = true;
  }

  AdviceAfterTax answer() const {
    AdviceAfterTax answer;
    answer.best = again(advice_.best);
    answer.successor_lev = scene_.tax->successor_lev;
    answer.land_value = scene_.tax->land_value;
    if (advice_.successor) {
      answer.successor =
          AfterTax(problem_.successor->stand_case, scene_.tax->rules, problem_.successor->acres)
              .report(stated(advice_.successor->name, advice_.successor->regime()))
              .value();
    }
    if (problem_.tabled.empty()) {
      for (const StatedAnswer& regime : advice_.regimes) {
        answer.regimes.push_back(again(regime.report));
      }
      for (const Alternative& other : advice_.alternatives) {
        answer.alternatives.push_back(again(other.report));
      }
    }
    if (advice_.standing) {
      answer.sell_today = sell_today(answer.best.value.objective);
      answer.advantage = answer.sell_today->loss_against_best;
    } else if (!answer.alternatives.empty() && advice_.alternatives.front().thinnings == 0) {
      answer.advantage = answer.best.value.objective - answer.alternatives.front().value.objective;
    }
    answer.best_after_tax = best_plan();
    return answer;
  }

 private:
  // A regime told before, told after tax: with the entries that cut nothing, which it names.
  RegimeReport again(const RegimeReport& report) const {
    StatedRegime regime{report.name, {}, report.final_harvest_age};
    for (const ThinningRecord& cut : report.thinnings) {
      StatedThinning entry;
      entry.at = cut.at;
      entry.removal_fraction = cut.cuts_nothing ? 0.0 : cut.removal_fraction;
      regime.thinnings.push_back(entry);
    }
    return tax_.report(regime).value();
  }

  SellToday sell_today(MoneyPerAcre best) const {
    const StatedRegime now{"sell today", {}, scene_.stand.stand_case.present()};
    const RegimeReport report = tax_.report(now).value();
    SellToday sale;
    sale.timber = report.final_harvest.revenue;
    sale.land = report.value.objective - sale.timber;
    sale.loss_against_best = best - report.value.objective;
    return sale;
  }

  Plan best_plan() const {
    Regime best = scene_.best().regime;
    MoneyPerAcre most = tax_.value(best).objective;
    for (const Regime& candidate : candidates()) {
      const MoneyPerAcre value = tax_.value(candidate).objective;
      const double more = value.in(dollars_per_acre);
      const double so_far = most.in(dollars_per_acre);
      if (more <= so_far || tolerance::values_tie(so_far, more)) continue;
      best = candidate;
      most = value;
    }
    return plan_of(scene_, {best, evaluate(scene_.stand.stand_case, best)});
  }

  std::vector<Regime> candidates() const {
    std::vector<Regime> regimes;
    if (!problem_.tabled.empty()) return regimes;
    StandProblem taxed = scene_.stand;
    taxed.stand_case = tax_.stand_case();
    add_best(taxed, regimes);
    if (tax_.basis() == MoneyPerAcre()) return regimes;
    const DecisionLattice whole = taxed.lattice;
    for (int at = whole.final_from.whole(); at <= whole.final_to.whole(); ++at) {
      taxed.lattice.final_from = taxed.lattice.final_to = age(at);
      add_best(taxed, regimes);
    }
    return regimes;
  }

  void add_best(const StandProblem& taxed, std::vector<Regime>& regimes) const {
    const StandSolution solution = solve(taxed, options_);
    if (solution.status == StandSolution::Status::no_regime) return;
    regimes.push_back(solution.best.regime);
    for (const auto& priced : solution.by_count) {
      if (priced) regimes.push_back(priced->regime);
    }
  }

  const AdviseProblem& problem_;
  const Scene& scene_;
  const Advice& advice_;
  AfterTax tax_;
  StandOptions options_;
};

}  // namespace

AdviceAfterTax answer_after_tax(const AdviseProblem& problem, const Scene& scene,
                                const Advice& advice, const StandOptions& options) {
  return TaxedAnswer(problem, scene, advice, options).answer();
}

}  // namespace staddle
