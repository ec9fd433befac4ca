// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>

#include "optimise/bound_table.h"
#include "optimise/candidates.h"
#include "optimise/last_cuts.h"
#include "optimise/random_problem.h"
#include "optimise/search_bounds.h"
#include "optimise/search_state.h"
#include "regime/evaluate.h"
#include "support/seed.h"

namespace staddle::support {
namespace {

// One stand problem with all that a search works with.
struct Workshop {
  explicit Workshop(const StandProblem& problem_of_owner)
      : problem(problem_of_owner),
        kernel(problem.stand_case),
        rules(problem, kernel),
        tables(kernel, rules),
        stand(tables),
        cuts(rules.removals().size()) {}
  StandProblem problem;
  CaseKernel kernel;
  LatticeRules rules;
  SearchTables tables;
  Trajectory stand;
  CutOptions cuts;
};

// Random problems within what the bounds are proved for.
std::optional<StandProblem> bounded_problem(RandomStream& random) {
  StandProblem problem = random_problem(random, {.just_so = true});
  StandCase& stand_case = problem.stand_case;
  if (stand_case.growth.kernel().from_table()) return std::nullopt;
  if (stand_case.standing) stand_case.growth_multiplier = 1.0;
  return problem;
}

// Exact value of the best harvest after a cut: alpha + beta x land.
double best_harvest(const Workshop& work, LatticeRegime regime, double land) {
  double best = -HUGE_VAL;
  const int last_cut = regime.age_yr[static_cast<std::size_t>(regime.cuts - 1)];
  for (int at = std::max(work.rules.final_from(), last_cut + work.rules.gap_yr());
       at <= work.rules.final_to(); ++at) {
    regime.final_yr = at;
    const RegimeValue value = evaluate(work.kernel, regime_of(regime, work.rules));
    best = std::max(best, value.net_present_value.in(dollars_per_acre) + value.land_weight * land);
  }
  return best;
}

struct Tally {
  int bounds = 0, broken = 0;
  double slack_usd_ac = 0;  // summed
};

// Follows random cuts and compares the bound of every option with its exact value.
void check_options(Workshop& work, RandomStream& random, const BoundTable& table, Tally& tally) {
  SearchState state = start_state(work.kernel, work.tables);
  LatticeRegime regime;
  LaneArray bound(work.rules.removals().size() + lane_padding, 0);
  while (regime.cuts < work.rules.max_thinnings()) {
    const Stretch stretch = stretch_of(work.rules, work.tables, {}, state);
    if (!stretch.plan.cuts_follow) return;
    const auto ages = static_cast<std::uint64_t>(stretch.cut_to - stretch.cut_from + 1);
    const int at = stretch.cut_from + static_cast<int>(random.next_below(ages));
    double unused = 0.0;
    vector_kernels().follow(work.tables, &state, 1, stretch.plan, &work.stand, &unused);
    const std::size_t count = work.rules.removals().size();
    cut_kernels().work_out_cuts(work.tables, state, work.stand, at, count, {}, work.cuts);
    const auto t = static_cast<std::size_t>(at);
    const double rate = work.kernel.response_rate(wide(work.stand.crown_ratio[t]));
    cut_kernels().bound_cuts(table.at(at), rate, wide(work.stand.money[t]),
                             wide(work.tables.discount[t]), work.cuts, bound);
    const auto entry = static_cast<std::size_t>(regime.cuts++);
    regime.age_yr[entry] = at;
    std::size_t taken = count;
    for (std::size_t option = 0; option < count; ++option) {
      if (!work.tables.removals_at(state.entries).leaves_trees[option]) continue;
      if (wide(work.cuts.tpa[option]) < fewest_trees_left) continue;
      regime.removal[entry] = static_cast<int>(option);
      taken = option;
      if (!std::isfinite(bound[option])) continue;
      const double exact = best_harvest(work, regime, table.land());
      const double excess = wide(bound[option]) - exact;
      ++tally.bounds;
      tally.slack_usd_ac += excess;
      if (excess < -work.tables.slack(exact)) ++tally.broken;
    }
    if (taken == count) return;
    state = state_after(work.kernel, work.tables, state, work.stand, at, work.cuts, taken,
                        work.rules.removals()[taken]);
  }
}

// The best of all removals at an age, each followed by its best harvest: alpha + beta land.
double best_cut(const Workshop& work, const ExactLimits& limits, LatticeRegime regime, int at,
                double land) {
  const RemovalFactors& factors = work.tables.removals_at(regime.cuts);
  const auto entry = static_cast<std::size_t>(regime.cuts++);
  regime.age_yr[entry] = at;
  double best = -HUGE_VAL;
  for (std::size_t option = 0; option < limits.removals_allowed(at); ++option) {
    if (!factors.leaves_trees[option]) continue;
    if (wide(work.cuts.tpa[option]) < fewest_trees_left) continue;
    regime.removal[entry] = static_cast<int>(option);
    best = std::max(best, best_harvest(work, regime, land));
  }
  return best;
}

// Takes random cuts until one is left to take, and compares the bounds on it at every age.
void check_next_cuts(Workshop& work, RandomStream& random, const BoundTable& table, Tally& tally) {
  const ExactLimits limits(work.kernel, work.rules);
  SearchBounds bounds(table);
  bounds.bound_next_cuts(work.rules, work.tables, limits);
  const std::size_t count = work.rules.removals().size();
  SearchState state = start_state(work.kernel, work.tables);
  LatticeRegime regime;
  while (true) {
    const Stretch stretch = stretch_of(work.rules, work.tables, {}, state);
    if (!stretch.plan.cuts_follow) return;
    double unused = 0.0;
    vector_kernels().follow(work.tables, &state, 1, stretch.plan, &work.stand, &unused);
    const bool last = regime.cuts + 1 == work.rules.max_thinnings();
    if (last) bounds.look_ahead(work.tables, work.stand, stretch.cut_from, stretch.cut_to);
    for (int at = stretch.cut_from; last && at <= stretch.cut_to; ++at) {
      // Means of nothing known are far above all values.
      if (bounds.of_age(at) > 1e-6 * wide(no_bound)) continue;
      cut_kernels().work_out_cuts(work.tables, state, work.stand, at, count, {}, work.cuts);
      const double exact = best_cut(work, limits, regime, at, table.land());
      if (exact == -HUGE_VAL) continue;
      const double excess = bounds.of_age(at) - exact;
      ++tally.bounds;
      tally.slack_usd_ac += excess;
      if (excess < -work.tables.slack(exact)) ++tally.broken;
    }
    if (last) return;
    const auto ages = static_cast<std::uint64_t>(stretch.cut_to - stretch.cut_from + 1);
    const int at = stretch.cut_from + static_cast<int>(random.next_below(ages));
    const auto option = static_cast<std::size_t>(random.next_below(count));
    cut_kernels().work_out_cuts(work.tables, state, work.stand, at, count, {}, work.cuts);
    if (!work.tables.removals_at(state.entries).leaves_trees[option]) return;
    if (wide(work.cuts.tpa[option]) < fewest_trees_left) return;
    state = state_after(work.kernel, work.tables, state, work.stand, at, work.cuts, option,
                        work.rules.removals()[option]);
    const auto entry = static_cast<std::size_t>(regime.cuts++);
    regime.age_yr[entry] = at;
    regime.removal[entry] = static_cast<int>(option);
  }
}

using Check = void (*)(Workshop&, RandomStream&, const BoundTable&, Tally&);

struct Outcome {
  Tally tally;
  int problems = 0, problems_broken = 0;
};

Outcome check_bounds(Check check, const std::string& tag, int problems, const BoundGrid& grid) {
  const TaggedSeed seed(tag);
  Outcome outcome;
  for (std::uint64_t number = 0; outcome.problems < problems; ++number) {
    RandomStream random = seed.stream(number);
    const std::optional<StandProblem> problem = bounded_problem(random);
    if (!problem) continue;
    Workshop work(*problem);
    const double land =
        work.kernel.standing() ? work.kernel.land_value() : 1500.0 * random.next_uniform() - 300.0;
    const std::vector<bool> all(work.tables.discount.size(), true);
    const auto table = BoundTable::make(work.kernel, work.rules, work.tables, land, all, grid);
    if (!table || work.rules.cut_to() < work.rules.cut_from()) continue;
    ++outcome.problems;
    const int before = outcome.tally.broken;
    for (int walk = 0; walk < 4; ++walk) check(work, random, *table, outcome.tally);
    if (outcome.tally.broken > before) ++outcome.problems_broken;
  }
  return outcome;
}

}  // namespace

TEST_CASE("no bound on leaving a stand alone is below the exact best harvest") {
  const Outcome outcome = check_bounds(check_options, "bounds", 150, {});
  CHECK(outcome.tally.bounds > 2000);
  CHECK(outcome.tally.broken == 0);
  // A bound that is true because it is far off would prune nothing.
  CHECK(outcome.tally.slack_usd_ac / outcome.tally.bounds < 15.0);
}

TEST_CASE("bounds hold on stretched grids where the allowances carry the proof") {
  CHECK(check_bounds(check_options, "few rates", 80, {.rates = 2}).tally.broken == 0);
  CHECK(check_bounds(check_options, "few tracks", 80, {.spacing_of_log_tpa = 0.8}).tally.broken ==
        0);
  CHECK(check_bounds(check_options, "few of both", 80, {.spacing_of_log_tpa = 0.6, .rates = 2})
            .tally.broken == 0);
}

TEST_CASE("no bound on the next cut is below the exact best of its removals and harvests") {
  const Outcome outcome = check_bounds(check_next_cuts, "next cuts", 250, {});
  CHECK(outcome.tally.bounds > 1500);
  CHECK(outcome.tally.broken == 0);
  CHECK(outcome.tally.slack_usd_ac / outcome.tally.bounds < 25.0);
}

TEST_CASE("bounds on the next cut hold on stretched grids") {
  CHECK(check_bounds(check_next_cuts, "next, few rates", 30, {.rates = 2}).tally.broken == 0);
  CHECK(check_bounds(check_next_cuts, "next, few tracks", 30, {.spacing_of_log_tpa = 0.8})
            .tally.broken == 0);
}

TEST_CASE("without allowances the bounds break so the tests above can fail") {
  const Outcome outcome = check_bounds(check_options, "bounds", 80, {.allowances = 0.0});
  CHECK(outcome.problems_broken > outcome.problems / 4);
  const Outcome stretched = check_bounds(
      check_options, "few of both", 80, {.spacing_of_log_tpa = 0.6, .rates = 2, .allowances = 0.0});
  CHECK(stretched.problems_broken > stretched.problems / 2);
  const Outcome next = check_bounds(check_next_cuts, "next cuts", 60, {.allowances = 0.0});
  CHECK(next.problems_broken > next.problems / 4);
}

namespace {

// The final harvests after each of these cuts as if it were the last, within rounding of
// the plain evaluator's.
void require_near_values(Workshop& work, const SearchState& state, int at, LatticeRegime regime) {
  LastCuts last(work.kernel, work.rules, work.tables, {});
  const auto entry = static_cast<std::size_t>(regime.cuts++);
  regime.age_yr[entry] = at;
  const auto require_values = [&] {
    if (last.value()) {
      for (std::size_t i = 0; i < last.count(); ++i) {
        regime.removal[entry] = last.option(i);
        const HarvestValues values = last.values(i);
        double highest = -HUGE_VAL;
        for (int final_yr = values.from; final_yr <= values.to(); ++final_yr) {
          regime.final_yr = final_yr;
          const double exact =
              evaluate(work.kernel, regime_of(regime, work.rules)).objective.in(dollars_per_acre);
          REQUIRE(std::fabs(values.at(final_yr) - exact) <= work.tables.rounding);
          highest = std::max(highest, values.at(final_yr));
        }
        REQUIRE(values.highest == highest);
      }
    }
    last.clear();
  };
  for (std::size_t option = 0; option < work.rules.removals().size(); ++option) {
    if (!work.tables.removals_at(state.entries).leaves_trees[option]) continue;
    if (wide(work.cuts.tpa[option]) < fewest_trees_left) continue;
    last.add(state, work.stand, at, work.cuts, option);
    if (last.full()) require_values();
  }
  if (!last.empty()) require_values();
}

}  // namespace

TEST_CASE("approximate values keep within the rounding that the search allows them") {
  const TaggedSeed seed("rounding");
  for (std::uint64_t number = 0; number < 150; ++number) {
    CAPTURE(number);
    RandomStream random = seed.stream(number);
    const StandProblem problem = random_problem(random, {.storms = number % 3 == 0});
    if (problem.stand_case.growth.kernel().from_table()) continue;
    Workshop work(problem);
    if (work.rules.final_from() > work.rules.final_to()) continue;
    SearchState state = start_state(work.kernel, work.tables);
    LatticeRegime regime;
    while (true) {
      const Stretch stretch = stretch_of(work.rules, work.tables, {}, state);
      if (stretch.plan.from > stretch.plan.to) break;
      double unused = 0.0;
      vector_kernels().follow(work.tables, &state, 1, stretch.plan, &work.stand, &unused);
      for (int at = stretch.plan.final_from; at <= stretch.plan.to; ++at) {
        regime.final_yr = at;
        const double exact =
            evaluate(work.kernel, regime_of(regime, work.rules)).objective.in(dollars_per_acre);
        const double near = wide(work.stand.objective[static_cast<std::size_t>(at)]);
        REQUIRE(std::fabs(near - exact) <= work.tables.rounding);
      }
      if (!stretch.plan.cuts_follow) break;
      const auto ages = static_cast<std::uint64_t>(stretch.cut_to - stretch.cut_from + 1);
      const int at = stretch.cut_from + static_cast<int>(random.next_below(ages));
      const auto option = static_cast<std::size_t>(random.next_below(work.rules.removals().size()));
      if (!work.tables.removals_at(state.entries).leaves_trees[option]) break;
      cut_kernels().work_out_cuts(work.tables, state, work.stand, at, work.rules.removals().size(),
                                  {}, work.cuts);
      require_near_values(work, state, at, regime);
      if (wide(work.cuts.tpa[option]) < fewest_trees_left) break;
      state = state_after(work.kernel, work.tables, state, work.stand, at, work.cuts, option,
                          work.rules.removals()[option]);
      const auto entry = static_cast<std::size_t>(regime.cuts++);
      regime.age_yr[entry] = at;
      regime.removal[entry] = static_cast<int>(option);
    }
  }
}

}  // namespace staddle::support
