// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/advise/storm_forecast.h"

#include <fmt/format.h>

#include "advise/scene.h"
#include "staddle/futures/simulate_futures.h"

namespace staddle {
namespace {

// The best regime, then the stated ones as far as they are possible.
Faults gather_plans(const AdviseProblem& problem, const Scene& scene, StormForecast& forecast) {
  forecast.regimes.push_back({"best", plan_of(scene, scene.best()), {}});
  Faults faults;
  for (std::size_t i = 0; i < problem.stated.size(); ++i) {
    const StatedRegime& regime = problem.stated[i];
    const Result<RegimeReport> report = simulate(scene.stand.stand_case, regime);
    if (report) {
      forecast.regimes.push_back(
          {regime.name, plan_of(scene, {report->regime(), report->value}), {}});
      continue;
    }
    for (Fault fault : report.error()) {
      fault.place = fmt::format("/regimes/{}{}", i, fault.place);
      faults.push_back(std::move(fault));
    }
  }
  return faults;
}

}  // namespace

Result<StormForecast> forecast_storms(const AdviseProblem& problem,
                                      const FuturesOptions& options) {
  require(problem.stand.stand_case.hazard.active(), "a storm forecast needs a hazard");
  StandOptions solving;
  solving.stop = options.stop;
  const Scene scene = solve_scene(problem, solving);
  if (!scene.solved()) {
    return Faults{{FaultCode::no_regime, "", "", scene.solution.reason, ""}};
  }
  StormForecast forecast;
  forecast.asked = options;
  forecast.standing = scene.stand.stand_case.standing.has_value();
  forecast.successor_lev = scene.successor_lev();
  Faults faults = gather_plans(problem, scene, forecast);
  if (!faults.empty()) return faults;

  FuturesProblem futures{scene.stand.stand_case, {}};
  for (const StormForecast::Told& told : forecast.regimes) {
    futures.regimes.push_back(told.plan.regime);
  }
  FuturesSolution solution = simulate_futures(futures, options);
  forecast.stopped = solution.status == FuturesSolution::Status::stopped;
  forecast.regimes.resize(solution.regimes.size());
  for (std::size_t i = 0; i < solution.regimes.size(); ++i) {
    forecast.regimes[i].futures = std::move(solution.regimes[i]);
  }
  return forecast;
}

}  // namespace staddle
