// SPDX-License-Identifier: GPL-3.0-or-later
// How long simulated futures take. No number here is a test.
//
//   cmake -S . -B build -DBUILD_BENCHMARKS=ON && cmake --build build --target futures_bench
//   build/tests/futures_bench
//
// Each row: 100,000 futures of one regime of a stand near the sea, with its table, its
// quantiles and what it is worth by the evaluator; on one thread and on all cores.
#include <benchmark/benchmark.h>

#include "staddle/futures/simulate_futures.h"
#include "staddle/io/model_library.h"

namespace {

using staddle::age;

staddle::FuturesProblem problem() {
  const staddle::EquationSet& set = staddle::built_in_equation_sets().front();
  staddle::StandCase stand_case{
      staddle::GrowthModel::from_equations(set, staddle::feet(70), staddle::trees_per_acre(600)),
      staddle::Assortment::from_equations(set, staddle::default_products()),
      {{staddle::dollars_per_ton(25)},
       {staddle::dollars_per_ton(18)},
       {staddle::dollars_per_ton(7)}},
      {staddle::DiscountRate::real(0.05)},
      staddle::hazard_of_zone(staddle::built_in_storm_zones().front(), staddle::Species::loblolly,
                              staddle::default_storm_recovery_yr())};
  stand_case.costs.establishment = staddle::dollars_per_acre(350);
  stand_case.costs.annual_cost = staddle::dollars_per_acre(8);
  return {stand_case, {{{{age(16), 1.0 / 3.0}, {age(22), 0.3}}, age(35)}}};
}

void futures(benchmark::State& state) {
  const staddle::FuturesProblem one = problem();
  staddle::FuturesOptions options;
  options.futures = 100'000;
  options.threads = static_cast<unsigned>(state.range(0));
  options.choices = state.range(1) != 0;
  for (auto _ : state) benchmark::DoNotOptimize(staddle::simulate_futures(one, options));
}

}  // namespace

BENCHMARK(futures)
    ->ArgNames({"threads", "choices"})
    ->Args({1, 0})
    ->Args({1, 1})
    ->Args({0, 0})
    ->Args({0, 1})
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);

BENCHMARK_MAIN();
