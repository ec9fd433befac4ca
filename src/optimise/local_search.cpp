// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/local_search.h"

#include <algorithm>
#include <limits>

#include "optimise/search_state.h"

namespace staddle {
namespace {

constexpr double minus_infinity = -std::numeric_limits<double>::infinity();

}  // namespace

void HighestByAge::note(const HarvestValues& values, int cut_yr) {
  for (int at = values.from; at <= values.to(); ++at) {
    double& holder = final[static_cast<std::size_t>(at)];
    holder = std::max(holder, values.at(at));
  }
  if (cut_yr == 0) return;
  double& holder = first[static_cast<std::size_t>(cut_yr)];
  holder = std::max(holder, values.highest);
}

LocalSearch::LocalSearch(const CaseKernel& kernel, const LatticeRules& rules,
                         const SearchTables& tables, const ExactLimits& limits,
                         const StandOptions& options, HighestByAge& by_age)
    : kernel_(kernel),
      rules_(rules),
      tables_(tables),
      limits_(limits),
      options_(options),
      by_age_(by_age),
      vectors_(vector_kernels()),
      cut_kernels_(cut_kernels()),
      stand_(tables),
      cuts_(rules.removals().size()) {}

void LocalSearch::run(Candidates& candidates) {
  LatticeRegime best;
  for (int count = 1; count <= rules_.max_thinnings(); ++count) {
    LatticeRegime plan;
    double value = minus_infinity;
    add_cut(best, plan, value);
    if (value == minus_infinity) return;
    climb(plan, value);
    candidates.offer(value, plan);
    best = plan;
  }
}

double LocalSearch::value_of(LatticeRegime& plan) {
  SearchState state = start_state(kernel_, tables_);
  LatticeRegime before;
  for (std::size_t i = 0; i < static_cast<std::size_t>(plan.cuts); ++i) {
    const int at = plan.age_yr[i];
    const auto removal = static_cast<std::size_t>(plan.removal[i]);
    const Stretch stretch = stretch_of(rules_, tables_, options_, state);
    if (at < stretch.cut_from || at > stretch.cut_to) return minus_infinity;
    const std::size_t allowed = limits_.removals_allowed(at);
    if (plan.removal[i] < 0 || removal >= allowed) return minus_infinity;
    if (i == 0 && !first_removal_asked(options_, rules_.removals()[removal])) return minus_infinity;
    StretchPlan part = stretch.plan;
    if (tables_.perils.empty()) part.from = at;
    part.to = at;
    double unused;
    vectors_.follow(tables_, &state, 1, part, &stand_, &unused);
    if (!limits_.stand_may_be_cut(before, stand_, at)) return minus_infinity;
    cut_kernels_.work_out_cuts(tables_, state, stand_, at, allowed, limits_.cut_limits(), cuts_);
    if (!tables_.removals_at(state.entries).leaves_trees[removal] ||
        !limits_.cut_may_be_taken(before, at, cuts_, removal)) {
      return minus_infinity;
    }
    state = state_after(kernel_, tables_, state, stand_, at, cuts_, removal,
                        rules_.removals()[removal]);
    before.age_yr[i] = at;
    before.removal[i] = plan.removal[i];
    ++before.cuts;
  }
  StretchPlan last = stretch_of(rules_, tables_, options_, state).plan;
  last.cuts_follow = false;
  if (last.final_from > last.to) return minus_infinity;
  if (tables_.perils.empty()) last.from = last.final_from;
  double value;
  vectors_.follow(tables_, &state, 1, last, &stand_, &value);
  for (int at = last.final_from; at <= last.to; ++at) {
    if (wide(stand_.objective[static_cast<std::size_t>(at)]) == value) plan.final_yr = at;
  }
  by_age_.note(values_of(stand_, last, value), plan.cuts > 0 ? plan.age_yr[0] : 0);
  return value;
}

bool LocalSearch::accept_if_better(LatticeRegime trial, LatticeRegime& plan, double& value) {
  const double tried = value_of(trial);
  if (!(tried > value)) return false;
  value = tried;
  plan = trial;
  return true;
}

void LocalSearch::add_cut(const LatticeRegime& before, LatticeRegime& plan, double& value) {
  const auto count = static_cast<std::size_t>(before.cuts);
  const int choices = static_cast<int>(rules_.removals().size());
  for (int at = rules_.cut_from(); at <= rules_.cut_to(); ++at) {
    LatticeRegime trial;
    std::size_t place = 0;
    while (place < count && before.age_yr[place] < at) ++place;
    for (std::size_t i = 0; i < count; ++i) {
      trial.age_yr[i < place ? i : i + 1] = before.age_yr[i];
      trial.removal[i < place ? i : i + 1] = before.removal[i];
    }
    trial.cuts = before.cuts + 1;
    trial.age_yr[place] = at;
    for (const int share : {0, 1, 2, 3}) {
      trial.removal[place] = share * (choices - 1) / 3;
      accept_if_better(trial, plan, value);
    }
  }
}

void LocalSearch::climb(LatticeRegime& plan, double& value) {
  const int leap = std::max(2, static_cast<int>(rules_.removals().size()) / 8);
  for (bool better = true; better;) {
    better = false;
    for (std::size_t i = 0; i < static_cast<std::size_t>(plan.cuts); ++i) {
      for (const int years : {0, -1, 1, -2, 2}) {
        for (const int steps : {0, -1, 1, -leap, leap}) {
          LatticeRegime trial = plan;
          trial.age_yr[i] += years;
          trial.removal[i] += steps;
          better = accept_if_better(trial, plan, value) || better;
        }
      }
    }
  }
}

}  // namespace staddle
