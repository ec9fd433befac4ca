// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/advise/storm_forecast.h"

#include <fmt/format.h>

#include "advise/scene.h"
#include "advise/tables.h"
#include "staddle/futures/simulate_futures.h"

namespace staddle {
namespace {

// One regime to simulate, on its own stand: tables of fixed regimes have one each.
struct Entry {
  std::string name;
  const StandCase* stand_case;
  PricedRegime priced;
};

Result<std::vector<Entry>> stated_entries(const AdviseProblem& problem,
                                          const StandCase& stand_case) {
  std::vector<Entry> entries;
  Faults faults;
  for (std::size_t i = 0; i < problem.stated.size(); ++i) {
    const Result<RegimeReport> report = simulate(stand_case, problem.stated[i]);
    if (report) {
      entries.push_back({problem.stated[i].name, &stand_case, {report->regime(), report->value}});
      continue;
    }
    for (Fault fault : report.error()) {
      fault.place = fmt::format("/regimes/{}{}", i, fault.place);
      faults.push_back(std::move(fault));
    }
  }
  if (!faults.empty()) return faults;
  return entries;
}

// Each table, ended at its own best age.
std::vector<Entry> tabled_entries(const AdviseProblem& problem) {
  std::vector<Entry> entries;
  for (const TableAnswer& answer : answers_of_tables(problem)) {
    const TabledChoice& choice = problem.tabled[answer.table];
    entries.push_back({choice.name, &choice.problem.stand_case, answer.best});
  }
  return entries;
}

// Simulates entry after entry, as far as no stop request comes; the progress is that of
// all of them together.
void simulate_entries(const std::vector<Entry>& entries, const Scene& scene,
                      StormForecast& forecast) {
  for (std::size_t i = 0; i < entries.size(); ++i) {
    FuturesOptions options = forecast.asked;
    if (options.progress) {
      options.progress = [&, i](double done) {
        forecast.asked.progress((static_cast<double>(i) + done) /
                                static_cast<double>(entries.size()));
      };
    }
    const FuturesSolution solution =
        simulate_futures({*entries[i].stand_case, {entries[i].priced.regime}}, options);
    forecast.stopped = solution.status == FuturesSolution::Status::stopped;
    if (forecast.stopped) return;
    forecast.regimes.push_back(
        {entries[i].name, plan_of(scene, entries[i].priced), solution.regimes.front()});
  }
}

}  // namespace

Result<StormForecast> forecast_storms(const AdviseProblem& problem,
                                      const FuturesOptions& options) {
  StandOptions solving;
  solving.stop = options.stop;
  const Scene scene = solve_scene(problem, solving);
  if (!scene.solved()) {
    return Faults{{FaultCode::no_regime, "", "", scene.solution.reason, ""}};
  }
  const StandCase& stand_case = scene.stand.stand_case;
  require(stand_case.hazard.active(), "a storm forecast needs a hazard");
  const Result<std::vector<Entry>> others =
      problem.tabled.empty() ? stated_entries(problem, stand_case)
                             : Result<std::vector<Entry>>(tabled_entries(problem));
  if (!others) return others.error();
  std::vector<Entry> entries{{"best", &stand_case, scene.best()}};
  entries.insert(entries.end(), others->begin(), others->end());

  StormForecast forecast;
  forecast.asked = options;
  forecast.standing = stand_case.standing.has_value();
  forecast.successor_lev = scene.successor_lev();
  simulate_entries(entries, scene, forecast);
  return forecast;
}

}  // namespace staddle
