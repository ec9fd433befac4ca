// SPDX-License-Identifier: GPL-3.0-or-later
#include "advise/tables.h"

#include <algorithm>
#include <tuple>

#include "optimise/search_answer.h"
#include "staddle/base/best_of_ties.h"

namespace staddle {
namespace {

double usd(const PricedRegime& priced) { return priced.value.objective.in(dollars_per_acre); }

PricedRegime ending_at(const StandCase& stand, Age final_harvest) {
  Regime regime;
  for (const TabledCut& cut : stand.tabled_cuts) regime.thinnings.push_back({cut.at, 0.0});
  regime.final_harvest = final_harvest;
  return {regime, evaluate(stand, regime)};
}

// The shares of basal area that the table's cuts took, now that they are known.
void fill_in_removals(const StandCase& stand, PricedRegime& priced) {
  priced.regime = simulate(stand, stated("", priced.regime)).value().regime();
}

bool earlier(const PricedRegime& a, const PricedRegime& b) {
  return a.regime.final_harvest < b.regime.final_harvest;
}

bool fewer_then_earlier(const TableAnswer& a, const TableAnswer& b) {
  const auto order = [](const TableAnswer& answer) {
    const Regime& regime = answer.best.regime;
    return std::tuple(regime.thinnings.size(), regime.final_harvest, answer.table);
  };
  return order(a) < order(b);
}

}  // namespace

std::vector<TableAnswer> answers_of_tables(const AdviseProblem& problem) {
  std::vector<TableAnswer> answers;
  for (std::size_t table = 0; table < problem.tabled.size(); ++table) {
    const TabledChoice& choice = problem.tabled[table];
    if (choice.final_ages.empty()) continue;
    const StandCase& stand = choice.problem.stand_case;
    std::vector<PricedRegime> endings;
    BestOfTies<PricedRegime, earlier> best;
    for (const Age at : choice.final_ages) {
      endings.push_back(ending_at(stand, at));
      best.offer(usd(endings.back()), endings.back());
    }
    TableAnswer answer{table, best.best()->choice, {}};
    NearBest& near_best = answer.near_best;
    near_best.tolerance = dollars_per_acre(near_best_tolerance_usd_ac(usd(answer.best)));
    const double floor = usd(answer.best) - near_best.tolerance.in(dollars_per_acre);
    const auto near = [&](const PricedRegime& ending) { return usd(ending) >= floor; };
    near_best.final_harvest_low =
        std::find_if(endings.begin(), endings.end(), near)->regime.final_harvest;
    near_best.final_harvest_high =
        std::find_if(endings.rbegin(), endings.rend(), near)->regime.final_harvest;
    if (!stand.tabled_cuts.empty()) {
      near_best.first_thinning_low = near_best.first_thinning_high = stand.tabled_cuts.front().at;
    }
    fill_in_removals(stand, answer.best);
    answers.push_back(answer);
  }
  return answers;
}

Scene compare_tables(const AdviseProblem& problem) {
  Scene scene{problem.tabled.front().problem, std::nullopt, {}};
  const std::vector<TableAnswer> answers = answers_of_tables(problem);
  for (const TabledChoice& choice : problem.tabled) {
    scene.solution.certificate.regimes_valued += choice.final_ages.size();
  }
  scene.solution.certificate.lattice_regimes =
      static_cast<double>(scene.solution.certificate.regimes_valued);
  if (answers.empty()) {
    scene.solution.reason = no_table_may_end;
    return scene;
  }
  BestOfTies<TableAnswer, fewer_then_earlier> best;
  for (const TableAnswer& answer : answers) best.offer(usd(answer.best), answer);
  const TableAnswer chosen = best.best()->choice;
  scene.table = chosen.table;
  scene.stand = problem.tabled[chosen.table].problem;
  scene.solution.status = StandSolution::Status::optimal;
  scene.solution.best = chosen.best;
  scene.solution.near_best = chosen.near_best;
  return scene;
}

}  // namespace staddle
