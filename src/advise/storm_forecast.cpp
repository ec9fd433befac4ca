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

// Adds to every figure of money but the costs of storms.
void add(MoneyPerAcre more, RegimeFutures& futures) {
  futures.expected_value += more;
  futures.mean += more;
  RegimeFutures::Quantiles& values = futures.quantiles;
  for (MoneyPerAcre* value : {&values.p05, &values.p25, &values.p50, &values.p75, &values.p95}) {
    *value += more;
  }
  if (futures.choices) futures.choices->mean += more;
}

// Simulates entry after entry, as far as no stop request comes; the progress is that of
// all of them together.
class Simulation {
 public:
  Simulation(const std::vector<Entry>& entries, const Scene& scene, StormForecast& forecast)
      : entries_(entries), scene_(scene), forecast_(forecast) {}

  void run() {
    for (const Entry& entry : entries_) {
      const std::optional<RegimeFutures> futures = futures_of(*entry.stand_case, entry);
      const std::optional<RegimeFutures> taxed = scene_.tax ? after_tax_of(entry) : std::nullopt;
      forecast_.stopped = !futures || (scene_.tax && !taxed);
      if (forecast_.stopped) return;
      forecast_.regimes.push_back(
          {entry.name, plan_of(scene_, entry.priced, *entry.stand_case), *futures, taxed});
    }
  }

 private:
  std::optional<RegimeFutures> futures_of(const StandCase& stand_case, const Entry& entry) {
    FuturesOptions options = forecast_.asked;
    if (options.progress) {
      const std::size_t all = entries_.size() * (scene_.tax ? 2 : 1);
      options.progress = [this, all](double done) {
        forecast_.asked.progress((static_cast<double>(done_) + done) / static_cast<double>(all));
      };
    }
    const FuturesSolution solution = simulate_futures({stand_case, {entry.priced.regime}}, options);
    ++done_;
    if (solution.status == FuturesSolution::Status::stopped) return std::nullopt;
    return solution.regimes.front();
  }

  std::optional<RegimeFutures> after_tax_of(const Entry& entry) {
    const AfterTax tax = after_tax(scene_, *entry.stand_case);
    std::optional<RegimeFutures> futures = futures_of(tax.without_basis(), entry);
    if (futures) add(tax.worth_of_basis(entry.priced.regime), *futures);
    return futures;
  }

  const std::vector<Entry>& entries_;
  const Scene& scene_;
  StormForecast& forecast_;
  std::size_t done_ = 0;
};

}  // namespace

Result<StormForecast> forecast_storms(const AdviseProblem& problem, const FuturesOptions& options) {
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
  if (scene.tax) forecast.hazard_after_tax = after_tax(scene, stand_case).stand_case().hazard;
  Simulation(entries, scene, forecast).run();
  return forecast;
}

}  // namespace staddle
