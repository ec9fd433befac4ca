// SPDX-License-Identifier: GPL-3.0-or-later
#include "vary/answers.h"

#include <algorithm>

#include "staddle/optimise/solve.h"

namespace staddle {
namespace {

// So many answers between two tellings of progress.
constexpr std::size_t answers_a_batch = 64;

std::optional<PricedRegime> best_of(const StandSolution& solution) {
  if (solution.status != StandSolution::Status::optimal) return std::nullopt;
  return solution.best;
}

VaryAnswer answer_by_search(const VaryProblem& problem, const Circumstances& circumstances) {
  World world = world_of(problem, circumstances);
  VaryAnswer answer;
  if (world.stand.stand_case.standing) {
    std::optional<MoneyPerAcre> successor_lev;
    if (world.successor) {
      const StandSolution successor = solve(*world.successor);
      answer.successor = best_of(successor);
      if (!answer.successor) {
        answer.reason = "of the stand planted after the harvest: " + successor.reason;
        return answer;
      }
      successor_lev = answer.successor->value.objective;
    }
    answer.land_value = world.stand.stand_case.land_value = problem.land_value(successor_lev);
  }
  const StandSolution solution = solve(world.stand);
  answer.best = best_of(solution);
  answer.reason = solution.reason;
  return answer;
}

}  // namespace

Answers::Answers(const VaryProblem& problem, const VaryOptions& options)
    : problem_(problem), options_(options) {}

void Answers::tell_progress(std::size_t more) {
  given_ += more;
  if (!options_.progress) return;
  const double whole = static_cast<double>(std::max<std::size_t>(expected_, 1));
  options_.progress(std::min(1.0, static_cast<double>(given_) / whole));
}

std::vector<VaryAnswer> Answers::of(const std::vector<Circumstances>& asked) {
  std::vector<VaryAnswer> answers(asked.size());
  for (std::size_t from = 0; from < asked.size(); from += answers_a_batch) {
    const std::size_t count = std::min(answers_a_batch, asked.size() - from);
    for_each_chunk(count, options_.threads, [&](std::size_t i) {
      answers[from + i] = answer_by_search(problem_, asked[from + i]);
    });
    tell_progress(count);
  }
  return answers;
}

VaryAnswer Answers::of(const Circumstances& asked) { return of(std::vector{asked}).front(); }

MoneyPerAcre held_value(const VaryProblem& problem, const Circumstances& circumstances,
                        MoneyPerAcre land_value, const Regime& regime) {
  World world = world_of(problem, circumstances);
  if (world.stand.stand_case.standing) world.stand.stand_case.land_value = land_value;
  return evaluate(world.stand.stand_case, regime).objective;
}

}  // namespace staddle
