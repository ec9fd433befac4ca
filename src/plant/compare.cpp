// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/plant/compare.h"

#include <algorithm>
#include <cmath>

#include "plant/break_even.h"
#include "plant/extrapolation.h"
#include "staddle/base/tolerance.h"
#include "staddle/optimise/solve.h"
#include "staddle/plant/gates.h"

namespace staddle {
namespace {

MoneyPerAcre sum_of(const std::vector<Practice>& practices) {
  MoneyPerAcre sum;
  for (const Practice& practice : practices) sum += practice.cost;
  return sum;
}

class Comparison {
 public:
  Comparison(const PlantProblem& problem, const PlantOptions& options)
      : problem_(problem), options_(options) {
    solving_.method =
        options.exhaustive ? StandOptions::Method::exhaustive : StandOptions::Method::automatic;
  }

  PlantSolution solve_all() {
    solution_.alternatives.resize(problem_.alternatives.size());
    for_each_chunk(problem_.alternatives.size(), options_.threads,
                   [&](std::size_t i) { answer(i); });
    if (problem_.as_stated) price_as_stated();
    rank();
    progress(0.2);
    if (options_.break_evens) find_break_evens();
    solution_.gates = plant_gates(problem_);
    solution_.species = species_advice(problem_);
    progress(1.0);
    return std::move(solution_);
  }

 private:
  void progress(double done) const {
    if (options_.progress) options_.progress(done);
  }

  // Losses and gains come with the ranks; without a regime there are the costs alone.
  std::optional<AlternativeAfterTax> after_tax(const StandProblem& stand,
                                               const std::optional<PricedRegime>& best) const {
    if (!problem_.tax) return std::nullopt;
    const AfterTax taxed(stand.stand_case, *problem_.tax, stand.acres);
    const Costs& costs = taxed.stand_case().costs;
    AlternativeAfterTax money{{}, costs.establishment, sum_of(costs.practices), {}, {}};
    if (best) {
      const RegimeValue value = taxed.value(best->regime);
      money.plan = {value, value.objective};
    }
    return money;
  }

  void answer(std::size_t i) {
    AlternativeAnswer& answer = solution_.alternatives[i];
    answer.alternative = problem_.alternatives[i];
    answer.establishment = answer.alternative.establishment();
    answer.later_practices = sum_of(answer.alternative.later_practices());
    answer.reason = shut_by(answer.alternative, problem_.site);
    answer.shut = !answer.reason.empty();
    const StandProblem stand = problem_.stand(answer.alternative);
    answer.after_tax = after_tax(stand, std::nullopt);
    if (answer.shut) return;
    StandSolution solved = solve(stand, solving_);
    if (solved.status == StandSolution::Status::no_regime) {
      answer.reason = solved.reason;
      return;
    }
    answer.best = std::move(solved.best);
    answer.after_tax = after_tax(stand, answer.best);
    answer.extrapolations = extrapolations_of(problem_, answer);
  }

  void price_as_stated() {
    StandSolution solved = solve(*problem_.as_stated, solving_);
    if (solved.status == StandSolution::Status::no_regime) return;
    solution_.as_stated = std::move(solved.best);
    if (const auto taxed = after_tax(*problem_.as_stated, solution_.as_stated)) {
      solution_.as_stated_after_tax = taxed->plan;
    }
  }

  // Ties are no order that sorting could use, so each place goes to the first of those that
  // tie with the best of the rest.
  void rank() {
    std::vector<std::size_t> rest;
    for (std::size_t i = 0; i < solution_.alternatives.size(); ++i) {
      if (solution_.alternatives[i].best) rest.push_back(i);
    }
    while (!rest.empty()) {
      const auto value = [&](std::size_t i) { return solution_.alternatives[i].worth_usd_ac(); };
      const double best = value(*std::ranges::max_element(rest, {}, value));
      const auto first = std::ranges::find_if(
          rest, [&](std::size_t i) { return tolerance::values_tie(best, value(i)); });
      solution_.ranking.push_back(*first);
      rest.erase(first);
    }
    for (std::size_t place = 0; place < solution_.ranking.size(); ++place) compare(place);
  }

  void compare(std::size_t place) {
    AlternativeAnswer& answer = solution_.alternatives[solution_.ranking[place]];
    const AlternativeAnswer& best = solution_.alternatives[solution_.ranking.front()];
    const auto more = [&](const AlternativeAnswer& other) {
      return dollars_per_acre(other.worth_usd_ac() - answer.worth_usd_ac());
    };
    const auto more_after_tax = [&](const AlternativeAnswer& other) {
      return other.after_tax->plan.value.objective - answer.after_tax->plan.value.objective;
    };
    answer.rank = place + 1;
    answer.loss_against_best = more(best);
    if (answer.after_tax) answer.after_tax->loss_against_best = more_after_tax(best);
    if (place == 0) return;
    answer.next_better = solution_.ranking[place - 1];
    const AlternativeAnswer& better = solution_.alternatives[*answer.next_better];
    answer.gain_of_next_better = more(better);
    if (answer.after_tax) answer.after_tax->gain_of_next_better = more_after_tax(better);
  }

  void find_break_evens() {
    for_each_chunk(solution_.ranking.size(), options_.threads, [&](std::size_t place) {
      AlternativeAnswer& answer = solution_.alternatives[solution_.ranking[place]];
      answer.break_even = break_even(place, answer);
    });
  }

  BreakEvenResponse break_even(std::size_t place, const AlternativeAnswer& answer) const {
    BreakEvenResponse none;
    none.today = answer.alternative.response.years_gained;
    none.reason = !problem_.equations ? "a yield table has no response that could be another"
                                      : "there is no other alternative to equal";
    if (!problem_.equations || solution_.ranking.size() < 2) return none;
    const std::size_t other = solution_.ranking[place == 0 ? 1 : 0];
    const auto value_of = [&](const EstablishmentAlternative& alternative) {
      const StandSolution solved = solve(problem_.stand(alternative), solving_);
      return solved.status == StandSolution::Status::no_regime
                 ? -HUGE_VAL
                 : solved.best.value.objective.in(dollars_per_acre);
    };
    return break_even_of(answer.alternative, problem_.site_index.value(), answer.worth_usd_ac(),
                         solution_.alternatives[other].worth_usd_ac(), value_of);
  }

  const PlantProblem& problem_;
  const PlantOptions& options_;
  StandOptions solving_;
  PlantSolution solution_;
};

}  // namespace

PlantSolution compare_establishments(const PlantProblem& problem, const PlantOptions& options) {
  return Comparison(problem, options).solve_all();
}

}  // namespace staddle
