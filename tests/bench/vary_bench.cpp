// SPDX-License-Identifier: GPL-3.0-or-later
// How many answers a second a pool of regimes gives when prices vary, the enumeration
// counted, against as many searches of their own: no number here is a test.
//
//   cmake -S . -B build -DBUILD_BENCHMARKS=ON && cmake --build build --target vary_bench
//   build/tests/vary_bench            all rows
//   build/tests/vary_bench --quick    leaves out the steps of 1 percent
//
// Columns: rates, price vectors at each, regimes of the lattice; by pool on one thread:
// seconds of the processor, and answers in such a second; by pool on all cores: seconds of
// the clock, and answers in such a second; processor seconds of as many searches of their
// own, told from a sample of them; the ratio of those to the pool's. The least of three
// runs; below, the largest memory the program ever held.
#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstring>
#include <ctime>
#include <string>
#include <vector>

#include "staddle/base/random.h"
#include "staddle/io/model_library.h"
#include "staddle/optimise/regime_pool.h"
#include "vary/answers.h"

namespace {

using staddle::age;
using staddle::Circumstances;
using staddle::dollars_per_acre;
using staddle::dollars_per_ton;
using staddle::RandomStream;
using staddle::VaryOptions;
using staddle::VaryProblem;

constexpr int repetitions = 3;
constexpr std::size_t sample_of_searches = 200;

// Coastal fit, site 70, planted 600, 5 percent, 7/18/25, establishment 350, no guards.
VaryProblem problem_with(int max_thinnings, double step) {
  const staddle::EquationSet& set = staddle::built_in_equation_sets().front();
  staddle::StandCase stand_case{
      staddle::GrowthModel::from_equations(set, staddle::feet(70), staddle::trees_per_acre(600)),
      staddle::Assortment::from_equations(set, staddle::default_products()),
      {{dollars_per_ton(25)}, {dollars_per_ton(18)}, {dollars_per_ton(7)}},
      {staddle::DiscountRate::real(0.05)},
      {},
      std::nullopt};
  stand_case.costs.establishment = dollars_per_acre(350);
  stand_case.costs.annual_cost = dollars_per_acre(8);
  staddle::DecisionLattice lattice;
  lattice.max_thinnings = max_thinnings;
  for (int i = 0; 0.20 + i * step <= 0.50 + 1e-9; ++i) {
    lattice.removal_fractions.push_back(0.20 + i * step);
  }
  VaryProblem problem{{stand_case, lattice}, {}, {}, {}, {}, {}, {}, {}, {}};
  problem.question.rates = {stand_case.costs.rate};
  return problem;
}

// Prices within 30 percent of today's, at rates from 3 to 8 percent.
std::vector<Circumstances> random_cells(const VaryProblem& problem, int rates, int vectors) {
  RandomStream random(2027, 5);
  std::vector<Circumstances> cells;
  for (int r = 0; r < rates; ++r) {
    for (int v = 0; v < vectors; ++v) {
      Circumstances cell = staddle::todays(problem);
      if (rates > 1) cell.rate = staddle::DiscountRate::real(0.03 + 0.05 * r / (rates - 1.0));
      for (staddle::ProductPrice& price : cell.prices) {
        price.stumpage = price.stumpage * (0.7 + 0.6 * random.next_uniform());
      }
      cells.push_back(cell);
    }
  }
  return cells;
}

struct Seconds {
  double of_clock = 1e300, of_processor = 1e300;
};

Seconds seconds_of(const VaryProblem& problem, const std::vector<Circumstances>& cells,
                   const VaryOptions& options, int times) {
  Seconds least;
  for (int i = 0; i < times; ++i) {
    const auto start = std::chrono::steady_clock::now();
    const std::clock_t start_of_processor = std::clock();
    staddle::Answers answers(problem, options);
    const auto found = answers.of(cells);
    const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
    if (!found.back().best) std::printf("a cell without an answer\n");
    least.of_clock = std::min(least.of_clock, taken.count());
    least.of_processor =
        std::min(least.of_processor,
                 static_cast<double>(std::clock() - start_of_processor) / CLOCKS_PER_SEC);
  }
  return least;
}

void run_row(const char* name, int rates, int vectors, int max_thinnings, double step) {
  const VaryProblem problem = problem_with(max_thinnings, step);
  const std::vector<Circumstances> cells = random_cells(problem, rates, vectors);
  VaryOptions pooled, one_thread, separate;
  one_thread.threads = separate.threads = 1;
  separate.method = VaryOptions::Method::separate;
  std::vector<Circumstances> sample;
  const std::size_t stride = std::max<std::size_t>(1, cells.size() / sample_of_searches);
  for (std::size_t i = 0; i < cells.size(); i += stride) sample.push_back(cells[i]);
  const double alone = seconds_of(problem, cells, one_thread, repetitions).of_processor;
  const double all = seconds_of(problem, cells, pooled, repetitions).of_clock;
  const double count = static_cast<double>(cells.size());
  const double searches = seconds_of(problem, sample, separate, 1).of_processor * count /
                          static_cast<double>(sample.size());
  std::printf("%-26s %5d %7d %9.0f %8.3f %9.0f %8.3f %9.0f %8.2f %6.1f\n", name, rates, vectors,
              staddle::RegimePool::lattice_regimes(problem.stand), alone, count / alone, all,
              count / all, searches, searches / alone);
}

}  // namespace

int main(int argc, char** argv) {
  const bool quick = argc > 1 && std::strcmp(argv[1], "--quick") == 0;
  std::printf("%-26s %5s %7s %9s %8s %9s %8s %9s %8s %6s\n", "lattice", "rates", "vectors",
              "regimes", "1 thread", "answers/s", "all", "answers/s", "searches", "ratio");
  run_row("two thinnings, 5 percent", 1, 10000, 2, 0.05);
  run_row("two thinnings, 5 percent", 100, 100, 2, 0.05);
  run_row("one thinning, 5 percent", 1, 10000, 1, 0.05);
  if (!quick) run_row("two thinnings, 1 percent", 1, 10000, 2, 0.01);
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  std::printf("largest memory: %ld MB\n", usage.ru_maxrss / 1024);
  return 0;
}
