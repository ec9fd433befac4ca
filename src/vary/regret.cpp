// SPDX-License-Identifier: GPL-3.0-or-later
#include "vary/regret.h"

#include <algorithm>

#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

// The regime whose `figure` is the least by more than a tie.
template <class Figure>
std::optional<std::size_t> least(const std::vector<RegimeLosses>& regimes, Figure figure) {
  std::optional<std::size_t> holder;
  for (std::size_t i = 0; i < regimes.size(); ++i) {
    const std::optional<MoneyPerAcre> value = figure(regimes[i]);
    if (!value) continue;
    if (holder) {
      const double held = figure(regimes[*holder])->in(dollars_per_acre);
      const double found = value->in(dollars_per_acre);
      if (found >= held || tolerance::values_tie(found, held)) continue;
    }
    holder = i;
  }
  return holder;
}

void sum_up(const VarySolution& solution, Losses& row) {
  double weights = 0.0;
  MoneyPerAcre weighed;
  for (std::size_t i = 0; i < row.loss.size(); ++i) {
    if (!row.loss[i]) continue;
    row.worst = row.worst ? std::max(*row.worst, *row.loss[i]) : *row.loss[i];
    const double weight = solution.price_scenarios[solution.cells[i].price_scenario].weight;
    weights += weight;
    weighed += *row.loss[i] * weight;
  }
  if (weights > 0.0) row.mean = weighed / weights;
}

}  // namespace

RegimeLosses losses_of(const VaryProblem& problem, const VaryOptions& options,
                       const VarySolution& solution,
                       const std::vector<Circumstances>& circumstances, std::string name,
                       const Regime& regime) {
  RegimeLosses row;
  row.name = std::move(name);
  row.regime = regime;
  row.loss.resize(solution.cells.size());
  if (problem.tax) row.after_tax = Losses{row.loss, std::nullopt, std::nullopt};
  for_each_chunk(solution.cells.size(), options.threads, [&](std::size_t i) {
    const VaryAnswer& answer = solution.cells[i].answer;
    if (!answer.best) return;
    row.loss[i] = *answer.value() - held_value(problem, circumstances[i], answer, regime);
    if (!row.after_tax) return;
    row.after_tax->loss[i] =
        *answer.value_after_tax() - held_value_after_tax(problem, circumstances[i], answer, regime);
  });
  sum_up(solution, row);
  if (row.after_tax) sum_up(solution, *row.after_tax);
  return row;
}

void choose_regimes(VarySolution& solution) {
  solution.least_worst_loss =
      least(solution.regimes, [](const RegimeLosses& row) { return row.worst; });
  solution.best_on_average =
      least(solution.regimes, [](const RegimeLosses& row) { return row.mean; });
}

}  // namespace staddle
