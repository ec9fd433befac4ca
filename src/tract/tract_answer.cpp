// SPDX-License-Identifier: GPL-3.0-or-later
#include "tract/tract_answer.h"

#include <algorithm>
#include <cmath>

#include "staddle/base/contract.h"

namespace staddle {
namespace {

std::string default_message(TractSolution::Status status, bool keeps_limits) {
  switch (status) {
    case TractSolution::Status::optimal:
      return "no plan that keeps the limits is worth more";
    case TractSolution::Status::infeasible:
      return "no plan keeps all limits; this is the best one under their smallest relaxation";
    case TractSolution::Status::limit_reached:
      return keeps_limits ? "stopped before the best plan was proved"
                          : "stopped before a plan that keeps all limits was met";
  }
  return "";
}

StandSchedule schedule_of(const StandModel& model, const std::vector<Share>& shares) {
  StandSchedule schedule;
  schedule.name = model.name;
  schedule.unlimited = model.own_best.regime;
  schedule.unlimited_value = dollars_per_acre(model.own_value);
  schedule.planting_known = !model.standing() || model.successor_lev.has_value();
  for (const Share& share : shares) {
    RegimeShare told;
    told.acres = acres(share.acres);
    told.report = model.report_of(share.regime);
    told.present_value = dollars_per_acre(model.present_value(told.report.value));
    told.land_value = dollars_per_acre(model.land.value);
    if (model.standing()) {
      told.forest_value = told.report.value.objective;
      told.land_expectation_value = model.successor_lev.value_or(MoneyPerAcre());
    } else {
      told.land_expectation_value = told.report.value.objective;
    }
    schedule.regimes.push_back(std::move(told));
  }
  return schedule;
}

std::vector<std::string> assumed_in(const TractProblem& problem,
                                    const std::vector<StandModel>& models) {
  std::vector<std::string> assumed = {
      "the stands planted after a final harvest follow their own best plan, whatever the limits"};
  const auto any = [&](const auto& test) {
    return std::any_of(models.begin(), models.end(), test);
  };
  if (any([](const StandModel& m) { return m.problem.lattice.min_sale > Weight(); })) {
    assumed.push_back("the least tons of a sale hold for every stand by itself, all its acres cut");
  }
  if (any([](const StandModel& m) { return !m.problem.stand_case.hazard.perils.empty(); })) {
    assumed.push_back(
        "with storms the figures of a period are expected ones; acres lost are replanted after "
        "the delay and counted from then on");
  }
  if (!problem.plan.tons.empty()) {
    assumed.push_back("limits on tons count what is cut, not what storms leave to be salvaged");
  }
  if (any([](const StandModel& m) { return m.land.fate == Land::Fate::sold; })) {
    assumed.push_back("land with a price earns and costs nothing more once it is bare");
  }
  return assumed;
}

}  // namespace

TractSolution tract_answer(const TractProblem& problem, const std::vector<StandModel>& models,
                           const Limits& limits, const Schedule& schedule, double unlimited) {
  TractSolution solution;
  solution.status = schedule.status;
  solution.keeps_limits = schedule.keeps_limits;
  solution.message = schedule.message.empty()
                         ? default_message(schedule.status, schedule.keeps_limits)
                         : schedule.message;
  solution.present_value = dollars(schedule.present_value);
  const double gap = std::max(0.0, schedule.bound - schedule.present_value);
  solution.bound = dollars(schedule.present_value + gap);
  solution.gap_fraction = gap / std::max(1.0, std::fabs(schedule.present_value));
  solution.split_present_value = dollars(schedule.split_present_value);
  solution.unlimited_present_value = solution.starting_value = dollars(unlimited);
  solution.ending_value = dollars(schedule.ending_value);
  solution.products = product_names(problem);
  solution.stands.resize(models.size());
  for (std::size_t s = 0; s < models.size(); ++s) {
    solution.stands[models[s].place] = schedule_of(models[s], schedule.shares[s]);
  }
  tell_flows(problem, models, solution);
  solution.limit_costs = limit_costs_of(problem, limits, schedule);
  if (schedule.status != TractSolution::Status::optimal) {
    solution.conflicts = conflicts_of(problem, limits, schedule);
  }
  solution.rounds = schedule.rounds;
  solution.columns = schedule.columns;
  solution.assumed = assumed_in(problem, models);
  return solution;
}

}  // namespace staddle
