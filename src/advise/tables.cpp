// SPDX-License-Identifier: GPL-3.0-or-later
#include "advise/tables.h"

#include <algorithm>
#include <cmath>

#include "optimise/search_answer.h"
#include "staddle/base/tolerance.h"

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

bool beats(const PricedRegime& challenger, const PricedRegime& holder) {
  if (!tolerance::values_tie(usd(challenger), usd(holder))) return usd(challenger) > usd(holder);
  const auto order = [](const PricedRegime& priced) {
    return std::pair(priced.regime.thinnings.size(), priced.regime.final_harvest);
  };
  return order(challenger) < order(holder);
}

}  // namespace

std::vector<TableAnswer> answers_of_tables(const AdviseProblem& problem) {
  std::vector<TableAnswer> answers;
  for (std::size_t table = 0; table < problem.tabled.size(); ++table) {
    const TabledChoice& choice = problem.tabled[table];
    if (choice.final_ages.empty()) continue;
    const StandCase& stand = choice.problem.stand_case;
    std::vector<PricedRegime> endings;
    for (const Age at : choice.final_ages) endings.push_back(ending_at(stand, at));
    TableAnswer answer{table, endings.front(), {}};
    for (const PricedRegime& ending : endings) {
      if (beats(ending, answer.best)) answer.best = ending;
    }
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
    scene.solution.reason = "no table has a row within the final-harvest ages that are allowed";
    return scene;
  }
  const TableAnswer* best = &answers.front();
  for (const TableAnswer& answer : answers) {
    if (beats(answer.best, best->best)) best = &answer;
  }
  scene.table = best->table;
  scene.stand = problem.tabled[best->table].problem;
  scene.solution.status = StandSolution::Status::optimal;
  scene.solution.best = best->best;
  scene.solution.near_best = best->near_best;
  return scene;
}

}  // namespace staddle
