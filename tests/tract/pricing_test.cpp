// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/tract/pricing.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "staddle/base/tolerance.h"
#include "support/near.h"
#include "support/seed.h"
#include "tract/column_generation.h"
#include "tract/made_ready.h"
#include "tract/small_tracts.h"

namespace staddle {
namespace {

using support::MadeReady;

// Limits of every kind, so that every measure has rows.
TractProblem with_all_limits(RandomStream& random, bool storms) {
  TractProblem problem = support::random_tract(random, {2, storms});
  TractPlan& plan = problem.plan;
  plan.income_floors = {{1, plan.years, dollars(1000)}};
  plan.income_max_drop_fraction = 0.5;
  plan.final_harvest_acres_max_per_period = acres(20);
  plan.group_final_harvest_acres_max_per_period = acres(10);
  plan.tons = {{"all", tons(10), tons(900), 0.5}, {"sawtimber", tons(1), {}, {}}};
  plan.open_stand = OpenStand{square_feet_per_acre(95), acres(2), 1};
  plan.ending_value_min_fraction = 0.9;
  plan.establishment_max_per_period = dollars(5000);
  return problem;
}

std::vector<double> random_worths(RandomStream& random, const Limits& limits) {
  std::vector<double> worths;
  for (const LimitRow& row : limits.rows) {
    const double size = row.measure == LimitRow::Measure::income ||
                                row.measure == LimitRow::Measure::establishment ||
                                row.measure == LimitRow::Measure::ending_value
                            ? 0.6
                        : row.measure == LimitRow::Measure::tons ? 8.0
                                                                 : 700.0;
    const double worth = random.next_uniform() < 0.5 ? 0.0 : size * random.next_uniform();
    worths.push_back(row.is_floor ? worth : -worth);
  }
  return worths;
}

void check_against_reports(const std::string& tag, bool storms) {
  const support::TaggedSeed seed(tag);
  RandomStream random = seed.stream();
  for (int trial = 0; trial < 12; ++trial) {
    const TractProblem problem = with_all_limits(random, storms);
    MadeReady made(problem);
    const std::vector<double> worths = random_worths(random, made.limits);
    for (std::size_t s = 0; s < made.models.size(); ++s) {
      std::vector<double> from_reports;
      for (const Regime& regime : made.pricer.all_regimes(s)) {
        from_reports.push_back(worth_of(column_of(made.models, s, made.limits, regime), worths));
      }
      const std::size_t most = std::min<std::size_t>(5, from_reports.size());
      const auto found =
          made.pricer.best(s, weights_of(made.limits, worths, made.models[s].group), most);
      REQUIRE(found.size() == most);
      std::sort(from_reports.begin(), from_reports.end(), std::greater<>());
      for (std::size_t i = 0; i < most; ++i) {
        CHECK(found[i].worth == support::relative(from_reports[i], support::two_methods));
        CHECK(worth_of(column_of(made.models, s, made.limits, found[i].regime), worths) ==
              support::relative(found[i].worth, support::two_methods));
      }
    }
  }
}

TEST_CASE("the search of a stand at weights finds what the reports of all its regimes say") {
  check_against_reports("pricing", false);
}

TEST_CASE("the search of a stand at weights agrees with the reports under storms") {
  check_against_reports("pricing, storms", true);
}

TEST_CASE("without weights the search finds each stand's own best value") {
  const support::TaggedSeed seed("plain weights");
  RandomStream random = seed.stream();
  for (int trial = 0; trial < 10; ++trial) {
    MadeReady made(support::random_tract(random, {4, trial % 2 == 1}));
    for (std::size_t s = 0; s < made.models.size(); ++s) {
      const auto best = made.pricer.best(s, plain_weights(made.limits, 1.0), 1);
      CHECK(best.front().worth ==
            support::relative(made.models[s].own_value, support::two_methods));
    }
  }
}

TEST_CASE("trees that are not kept give the same regimes and the same worths to the bit") {
  const support::TaggedSeed seed("kept trees");
  RandomStream random = seed.stream();
  const TractProblem problem = with_all_limits(random, true);
  MadeReady made(problem);
  ExactPricer forgetful(made.models, made.limits, 0.0);
  const std::vector<double> worths = random_worths(random, made.limits);
  for (std::size_t s = 0; s < made.models.size(); ++s) {
    const PlanWeights weights = weights_of(made.limits, worths, made.models[s].group);
    const auto kept = made.pricer.best(s, weights, 3);
    const auto grown = forgetful.best(s, weights, 3);
    REQUIRE(kept.size() == grown.size());
    for (std::size_t i = 0; i < kept.size(); ++i) {
      CHECK(kept[i].worth == grown[i].worth);
      CHECK(same_regime(kept[i].regime, grown[i].regime));
    }
  }
}

// Stands whose trees are not kept are slow: what is known of them is tried first.
TEST_CASE("slow stands end at the value and the bound of quick ones") {
  const support::TaggedSeed seed("slow stands");
  RandomStream random = seed.stream();
  for (int trial = 0; trial < 10; ++trial) {
    TractProblem problem = support::random_tract(random, {4, trial % 2 == 1});
    support::add_random_limits(random, problem);
    MadeReady made(problem);
    ExactPricer forgetful(made.models, made.limits, 0.0);
    double values[2];
    double bounds[2];
    for (int slow = 0; slow < 2; ++slow) {
      Master master(made.models, made.limits);
      for (std::size_t s = 0; s < made.models.size(); ++s) {
        master.add(column_of(made.models, s, made.limits, made.models[s].own_best.regime));
      }
      ExactPricer& pricer = slow == 1 ? forgetful : made.pricer;
      CHECK(pricer.is_slow(0) == (slow == 1));
      const TractOptions options;
      ColumnGeneration generation(made.models, made.limits, master, pricer, options);
      generation.run(TractProgress::Stage::schedule);
      values[slow] = master.value();
      bounds[slow] = generation.bound();
    }
    const double slack = 2 * tolerance::tract_proof * (1.0 + std::fabs(values[0]));
    CHECK(values[1] == support::within(values[0], slack));
    CHECK(bounds[1] >= values[1] - slack);
  }
}

}  // namespace
}  // namespace staddle
