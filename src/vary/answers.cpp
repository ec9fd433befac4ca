// SPDX-License-Identifier: GPL-3.0-or-later
#include "vary/answers.h"

#include <algorithm>

#include "staddle/base/contract.h"
#include "staddle/optimise/solve.h"
#include "staddle/regime/after_tax.h"
#include "vary/pooled_answers.h"

namespace staddle {
namespace {

// So many answers between two tellings of progress.
constexpr std::size_t answers_a_batch = 64;

std::optional<PricedRegime> best_of(const StandSolution& solution) {
  if (solution.status != StandSolution::Status::optimal) return std::nullopt;
  return solution.best;
}

void note_successor(const StandSolution& successor, VaryAnswer& answer) {
  answer.successor = best_of(successor);
  if (!answer.successor) {
    answer.reason = "of the stand planted after the harvest: " + successor.reason;
  }
}

MoneyPerAcre land_value_of(const VaryProblem& problem, const VaryAnswer& answer) {
  std::optional<MoneyPerAcre> successor_lev;
  if (answer.successor) successor_lev = answer.successor->value.objective;
  return problem.land_value(successor_lev);
}

void search_successor(const VaryProblem& problem, const Circumstances& circumstances,
                      VaryAnswer& answer) {
  if (!problem.successor) return;
  note_successor(solve(*world_of(problem, circumstances).successor), answer);
}

void search_stand(const VaryProblem& problem, const Circumstances& circumstances,
                  VaryAnswer& answer) {
  if (!answer.reason.empty()) return;
  World world = world_of(problem, circumstances);
  world.stand.stand_case.land_value = answer.land_value;
  const StandSolution solution = solve(world.stand);
  answer.best = best_of(solution);
  answer.reason = solution.reason;
}

// The places of circumstances that share their growth.
std::vector<std::vector<std::size_t>> by_growth(const std::vector<Circumstances>& asked) {
  std::vector<std::vector<std::size_t>> groups;
  for (std::size_t i = 0; i < asked.size(); ++i) {
    const auto group = std::find_if(groups.rbegin(), groups.rend(), [&](const auto& places) {
      return asked[places.front()].same_growth(asked[i]);
    });
    if (group == groups.rend()) {
      groups.push_back({i});
    } else {
      group->push_back(i);
    }
  }
  return groups;
}

std::vector<const Circumstances*> chosen(const std::vector<Circumstances>& asked,
                                         const std::vector<std::size_t>& places) {
  std::vector<const Circumstances*> found;
  for (const std::size_t i : places) found.push_back(&asked[i]);
  return found;
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
  const bool standing = problem_.stand.stand_case.standing.has_value();
  for (const std::vector<std::size_t>& places : by_growth(asked)) {
    const World world = world_of(problem_, asked[places.front()]);
    if (standing) {
      if (world.successor) answer_successors(*world.successor, asked, places, answers);
      for (const std::size_t i : places) {
        answers[i].land_value = land_value_of(problem_, answers[i]);
      }
    }
    answer_stands(world.stand, asked, places, answers);
  }
  if (problem_.tax) tax(asked, answers);
  return answers;
}

void Answers::tax(const std::vector<Circumstances>& asked, std::vector<VaryAnswer>& answers) const {
  for_each_chunk(asked.size(), options_.threads, [&](std::size_t i) {
    VaryAnswer& answer = answers[i];
    if (!answer.best) return;
    const World world = world_of(problem_, asked[i]);
    std::optional<MoneyPerAcre> successor_lev;
    if (answer.successor) {
      const StandProblem& successor = world.successor.value();
      successor_lev = AfterTax(successor.stand_case, *problem_.tax, successor.acres)
                          .value(answer.successor->regime)
                          .objective;
    }
    const bool standing = world.stand.stand_case.standing.has_value();
    if (standing) answer.land_value_after_tax = problem_.land_value(successor_lev);
    const RegimeValue value = AfterTax(world.stand.stand_case, *problem_.tax, world.stand.acres,
                                       answer.land_value_after_tax)
                                  .value(answer.best->regime);
    answer.after_tax = {value, standing ? successor_lev : std::optional(value.objective)};
  });
}

bool Answers::pools(const StandProblem& problem, const std::vector<Circumstances>& asked,
                    const std::vector<std::size_t>& places) const {
  return options_.method == VaryOptions::Method::automatic && places.size() > 1 &&
         pool_is_less_work(problem, places.size(), count_rates(chosen(asked, places)));
}

void Answers::answer_successors(const StandProblem& successor,
                                const std::vector<Circumstances>& asked,
                                const std::vector<std::size_t>& places,
                                std::vector<VaryAnswer>& answers) {
  if (!pools(successor, asked, places)) {
    for_each_chunk(places.size(), options_.threads, [&](std::size_t i) {
      search_successor(problem_, asked[places[i]], answers[places[i]]);
    });
    return;
  }
  const std::vector<PricedRegime> found =
      best_by_pool(successor, chosen(asked, places), {}, options_.threads, [](std::size_t) {});
  for (std::size_t i = 0; i < places.size(); ++i) answers[places[i]].successor = found[i];
}

void Answers::answer_stands(const StandProblem& stand, const std::vector<Circumstances>& asked,
                            const std::vector<std::size_t>& places,
                            std::vector<VaryAnswer>& answers) {
  const bool all_on_known_land = std::all_of(
      places.begin(), places.end(), [&](std::size_t i) { return answers[i].reason.empty(); });
  if (all_on_known_land && pools(stand, asked, places)) {
    std::vector<MoneyPerAcre> land_values;
    for (const std::size_t i : places) land_values.push_back(answers[i].land_value);
    const std::vector<PricedRegime> found =
        best_by_pool(stand, chosen(asked, places), land_values, options_.threads,
                     [this](std::size_t more) { tell_progress(more); });
    for (std::size_t i = 0; i < places.size(); ++i) answers[places[i]].best = found[i];
    return;
  }
  for (std::size_t from = 0; from < places.size(); from += answers_a_batch) {
    const std::size_t count = std::min(answers_a_batch, places.size() - from);
    for_each_chunk(count, options_.threads, [&](std::size_t i) {
      const std::size_t place = places[from + i];
      search_stand(problem_, asked[place], answers[place]);
    });
    tell_progress(count);
  }
}

VaryAnswer Answers::of(const Circumstances& asked) { return of(std::vector{asked}).front(); }

MoneyPerAcre held_value(const VaryProblem& problem, const Circumstances& circumstances,
                        const VaryAnswer& answer, const Regime& regime) {
  World world = world_of(problem, circumstances);
  if (world.stand.stand_case.standing) world.stand.stand_case.land_value = answer.land_value;
  return evaluate(world.stand.stand_case, regime).objective;
}

MoneyPerAcre held_value_after_tax(const VaryProblem& problem, const Circumstances& circumstances,
                                  const VaryAnswer& answer, const Regime& regime) {
  require(problem.tax && answer.best, "after tax asks for tax rules and for a plan");
  const World world = world_of(problem, circumstances);
  return AfterTax(world.stand.stand_case, *problem.tax, world.stand.acres,
                  answer.land_value_after_tax)
      .value(regime)
      .objective;
}

}  // namespace staddle
