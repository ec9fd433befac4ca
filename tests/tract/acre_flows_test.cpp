// SPDX-License-Identifier: GPL-3.0-or-later
#include "tract/acre_flows.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numeric>

#include "support/near.h"
#include "support/seed.h"
#include "tract/made_ready.h"
#include "tract/small_tracts.h"

namespace staddle {
namespace {

using support::MadeReady;

// What the flows within the plan and the value at its end are worth at the present; land
// that was sold within the plan was paid for then.
double worth_by_flows(const Land& land, const RegimeYears& regime, const AcreFlows& flows,
                      int plan_years) {
  double worth = land.discount(plan_years) * flows.ending_value;
  for (int t = 0; t <= plan_years; ++t) {
    const auto i = static_cast<std::size_t>(t);
    worth += land.discount(t) * (flows.income[i] - flows.cost[i]);
  }
  if (land.fate != Land::Fate::sold) return worth;
  for (int t = 0; t + land.delay_yr <= plan_years; ++t) {
    if (static_cast<std::size_t>(t) >= regime.size()) break;
    worth += regime.turned_bare[static_cast<std::size_t>(t)] * land.value *
             (land.discount(t + land.delay_yr) - land.discount(plan_years));
  }
  return worth;
}

TEST_CASE("flows within the plan and the value at its end make up the present value") {
  const support::TaggedSeed seed("flows");
  RandomStream random = seed.stream();
  for (int trial = 0; trial < 24; ++trial) {
    TractProblem problem = support::random_tract(random, {2, trial % 2 == 1});
    problem.plan.years = problem.plan.period_yr * (trial % 3 == 0 ? 30 : 5);
    const MadeReady made(problem);
    for (std::size_t s = 0; s < made.models.size(); ++s) {
      const StandModel& model = made.models[s];
      const std::vector<Regime> all = made.pricer.all_regimes(s);
      for (std::size_t i = 0; i < all.size(); i += 1 + all.size() / 7) {
        const RegimeReport report = model.report_of(all[i]);
        const AcreFlows flows = model.flows_of(report, problem.plan.years);
        const RegimeYears years = years_of(model.problem.stand_case, report, model.reading);
        CHECK(worth_by_flows(model.land, years, flows, problem.plan.years) ==
              support::within(flows.present_value,
                              support::two_methods * (1.0 + std::fabs(flows.present_value))));
      }
    }
  }
}

TEST_CASE("acres that turn bare are those of the land weight") {
  const support::TaggedSeed seed("bare acres");
  RandomStream random = seed.stream();
  for (int trial = 0; trial < 10; ++trial) {
    const MadeReady made(support::random_tract(random, {2, true}));
    for (const StandModel& model : made.models) {
      const RegimeReport report = model.report_of(model.own_best.regime);
      const RegimeYears years = years_of(model.problem.stand_case, report, model.reading);
      double weight = 0.0;
      for (std::size_t t = 0; t < years.size(); ++t) {
        weight +=
            years.turned_bare[t] * model.land.discount(static_cast<int>(t) + model.land.delay_yr);
      }
      CHECK(weight == support::relative(report.value.land_weight, support::two_methods));
      CHECK(std::accumulate(years.turned_bare.begin(), years.turned_bare.end(), 0.0) ==
            support::relative(1.0, support::two_methods));
    }
  }
}

// Bare land, every acre open until basal area reaches the limit, replanted a year after
// each harvest: counted by hand from the report.
TEST_CASE("successors follow the rule: planted after the delay and grown as the first rotation") {
  const support::TaggedSeed seed("rotations");
  RandomStream random = seed.stream();
  int seen = 0;
  for (int trial = 0; trial < 40 && seen < 3; ++trial) {
    TractProblem problem = support::random_tract(random, {1, false});
    if (problem.stands.front().problem.stand_case.standing) continue;
    ++seen;
    problem.plan.period_yr = 1;
    problem.plan.years = 90;
    problem.plan.open_stand = OpenStand{square_feet_per_acre(60), acres(1), 1};
    const MadeReady made(problem);
    const StandModel& model = made.models.front();
    const RegimeReport report = model.report_of(model.own_best.regime);
    const AcreFlows flows = model.flows_of(report, problem.plan.years);
    const int cycle = report.final_harvest_age.whole() + model.land.delay_yr;
    for (int t = 1; t <= problem.plan.years; ++t) {
      const auto i = static_cast<std::size_t>(t);
      const bool is_harvest = t % cycle == report.final_harvest_age.whole() % cycle;
      CHECK(flows.final_harvest[i] == (is_harvest ? 1.0 : 0.0));
      CHECK((flows.establishment[i] > 0.0) == (t % cycle == 0));
      const int age_yr = t % cycle;
      bool open = age_yr >= report.final_harvest_age.whole();  // waiting to be planted
      if (!open) {
        const auto& record = report.years[static_cast<std::size_t>(age_yr)];
        BasalArea stands = record.measures.basal_area;
        for (const ThinningRecord& cut : report.thinnings) {
          if (cut.at == record.at) stands = cut.after.basal_area;
        }
        open = stands < square_feet_per_acre(60);
      }
      CHECK(flows.open[i] == (open ? 1.0 : 0.0));
    }
  }
  CHECK(seen == 3);
}

}  // namespace
}  // namespace staddle
