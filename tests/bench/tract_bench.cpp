// SPDX-License-Identifier: GPL-3.0-or-later
// How long a tract takes: stands of all ages over 30 periods of one year, with a floor on
// income, a cap on acres cut, and bounds on how timber and income may change. No number here
// is a test.
//
//   cmake -S . -B build -DBUILD_BENCHMARKS=ON && cmake --build build --target tract_bench
//   build/tests/tract_bench [--stands N] [--gap G] [--threads T] [--rounds] [--whole]
//   build/tests/tract_bench --enumerated [--from M] [--stands N] [--seconds S]
//
// Without --enumerated: N stands (1,000) by column generation to a gap G (1e-4). With it: the
// same tract with every regime a column, for M (10), 2M, 4M, ... up to N stands, given to GLPK and
// to HiGHS (SciPy of /usr/bin/python3, where it is installed) as long as each needs less than
// S seconds (600); beside it column generation to the same optimum. Seconds are of the
// processor, all threads added, and of the clock.
#include <sys/resource.h>
#include <sys/wait.h>

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <ctime>
#include <string>
#include <vector>

#include "lp/solve.h"
#include "staddle/base/random.h"
#include "staddle/io/model_library.h"
#include "staddle/tract/solve.h"
#include "tract/exact_pricer.h"
#include "tract/tract_column.h"

namespace {

using staddle::acres;
using staddle::age;
using staddle::dollars;
using staddle::dollars_per_acre;
using staddle::dollars_per_ton;
using staddle::feet;
using staddle::RandomStream;
using staddle::TractProblem;
using staddle::TractSolution;
using staddle::TractStand;

constexpr int plan_years = 30;

// Half of either fit, sites 60 to 80, 450 to 750 planted, age 0 to 34, 20 to 100 acres; the
// file format's defaults for all else, guards included.
TractStand random_stand(RandomStream& random, int number) {
  const auto between = [&](double low, double high) {
    return low + (high - low) * random.next_uniform();
  };
  const auto& sets = staddle::built_in_equation_sets();
  const staddle::EquationSet& set = sets[random.next_below(sets.size())];
  const double planted = between(450, 750);
  staddle::StandCase stand_case{
      staddle::GrowthModel::from_equations(set, feet(between(60, 80)),
                                           staddle::trees_per_acre(planted)),
      staddle::Assortment::from_equations(set, staddle::default_products()),
      {{dollars_per_ton(25)}, {dollars_per_ton(18)}, {dollars_per_ton(7)}},
      {staddle::DiscountRate::real(0.05)},
      {},
      std::nullopt};
  stand_case.costs.establishment = dollars_per_acre(350);
  stand_case.costs.annual_cost = dollars_per_acre(8);
  staddle::DecisionLattice lattice;
  lattice.removal_fractions = {0.20, 0.25, 0.30, 1.0 / 3.0, 0.40, 0.45, 0.50};
  lattice.guards = staddle::default_guards();
  char name[32];
  std::snprintf(name, sizeof name, "stand %05d", number);
  TractStand stand{name, "", {stand_case, lattice, acres(between(20, 100))}};
  // Most of the tract was planted within ten years, so that its income comes in a wave.
  const bool of_the_wave = random.next_uniform() < 0.6;
  const int at = static_cast<int>(of_the_wave ? 12 + random.next_below(10) : random.next_below(35));
  if (at < 8) return stand;  // bare, or as good as
  stand.successor = stand.problem;
  staddle::MeasuredStand measured;
  measured.at = age(at);
  measured.trees = staddle::trees_per_acre(planted * (1.0 - 0.012 * at));
  measured.basal_area = staddle::square_feet_per_acre(std::min(150.0, 9.0 * (at - 3.0)));
  stand.problem.stand_case.standing = measured;
  return stand;
}

TractProblem tract_of(int stands) {
  RandomStream random(2027, 7);
  TractProblem tract;
  double area = 0.0;
  for (int i = 0; i < stands; ++i) {
    tract.stands.push_back(random_stand(random, i));
    area += tract.stands.back().problem.acres.in(acres);
  }
  tract.plan.years = plan_years;
  tract.plan.period_yr = 1;
  tract.plan.income_floors = {{1, plan_years, dollars(55.0 * area)}};
  tract.plan.income_max_drop_fraction = 0.05;
  tract.plan.final_harvest_acres_max_per_period = acres(0.04 * area);
  tract.plan.tons = {{"all", {}, {}, 0.10}};
  return tract;
}

// Whole stands cannot be cut as evenly: periods of five years, and wider bounds.
void ask_for_whole_stands(TractProblem& tract) {
  double area = 0.0;
  for (const TractStand& stand : tract.stands) area += stand.problem.acres.in(acres);
  tract.plan.whole_stands = true;
  tract.plan.period_yr = 5;
  tract.plan.income_max_drop_fraction = 0.3;
  tract.plan.final_harvest_acres_max_per_period = acres(0.2 * area);
  tract.plan.tons = {{"all", {}, {}, 0.5}};
}

struct Clock {
  std::chrono::steady_clock::time_point start = std::chrono::steady_clock::now();
  std::clock_t start_of_processor = std::clock();
  double seconds() const {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  }
  double of_processor() const {
    return static_cast<double>(std::clock() - start_of_processor) / CLOCKS_PER_SEC;
  }
};

long megabytes() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return usage.ru_maxrss / 1024;
}

TractSolution solve_by_generation(const TractProblem& tract, double gap, unsigned threads,
                                  bool rounds) {
  const Clock clock;
  staddle::TractOptions options;
  options.max_gap = gap;
  options.threads = threads;
  if (rounds) {
    options.progress = [&](const staddle::TractProgress& told) {
      std::printf("  %d round %3d  columns %6zu  value %.0f  bound %.0f  %.1f s\n",
                  static_cast<int>(told.stage), told.round, told.columns, told.value, told.bound,
                  clock.seconds());
      std::fflush(stdout);
    };
  }
  TractSolution solution = staddle::solve(tract, options).value();
  std::printf(
      "%6zu stands by generation: %8.2f s of processor, %8.2f s of clock, %3d rounds, %6zu "
      "columns, "
      "status %d, value %.2f (%.2f without limits, %zu limits cost something), gap %.1e, %ld MB\n",
      tract.stands.size(), clock.of_processor(), clock.seconds(), solution.rounds, solution.columns,
      static_cast<int>(solution.status), solution.present_value.in(dollars),
      solution.unlimited_present_value.in(dollars), solution.limit_costs.size(),
      solution.gap_fraction, megabytes());
  std::fflush(stdout);
  return solution;
}

staddle::lp::LinearProgram enumerated(const TractProblem& tract) {
  const auto models = staddle::make_stand_models(tract, {}).value();
  const staddle::Limits limits = staddle::limits_of(tract, 0.0);
  const staddle::ExactPricer pricer(models, limits);
  staddle::lp::LinearProgram program{staddle::lp::Direction::maximise};
  for (const auto& model : models) program.add_row({model.acres, model.acres});
  for (const auto& row : limits.rows) {
    program.add_row(row.is_floor ? staddle::lp::Row{row.bound, staddle::lp::infinity}
                                 : staddle::lp::Row{-staddle::lp::infinity, row.bound});
  }
  for (std::size_t s = 0; s < models.size(); ++s) {
    for (const staddle::Regime& regime : pricer.all_regimes(s)) {
      const auto column = staddle::column_of(models, s, limits, regime);
      std::vector<staddle::lp::Term> terms = {{s, 1.0}};
      for (const auto& use : column.uses) terms.push_back({models.size() + use.index, use.value});
      program.add_column({.cost = column.value}, terms);
    }
  }
  return program;
}

bool solve_by_glpk(const staddle::lp::LinearProgram& program, double seconds) {
  const Clock clock;
  staddle::lp::Options options;
  options.seconds = seconds;
  options.presolve = true;
  const staddle::lp::Solution solution = staddle::lp::solve(program, options);
  const bool solved = solution.status == staddle::lp::Status::optimal;
  std::printf("         GLPK, all %zu columns: %8.2f s of processor, %s, value %.2f\n",
              program.columns.size(), clock.of_processor(), solution.message.c_str(),
              solution.value);
  std::fflush(stdout);
  return solved;
}

const char* const highs_script = R"(
import sys, time, numpy as np
from scipy.optimize import linprog
from scipy.sparse import csr_matrix
d = open(sys.argv[1], 'rb')
n, m, k = np.fromfile(d, np.int64, 3)
cost, lower, upper = (np.fromfile(d, np.float64, c) for c in (n, m, m))
i, j, a = np.fromfile(d, np.int64, k), np.fromfile(d, np.int64, k), np.fromfile(d, np.float64, k)
matrix = csr_matrix((a, (i, j)), shape=(m, n))
equal = lower == upper
floor = np.isfinite(lower) & ~equal
rows = np.where(~equal)[0]
sign = np.where(floor, -1.0, 1.0)
from scipy.sparse import diags
a_ub = diags(sign[rows]) @ matrix[rows]
b_ub = np.where(floor, -lower, upper)[rows]
for method in ('highs-ds', 'highs-ipm'):
    start = time.process_time()
    r = linprog(-cost, A_ub=a_ub, b_ub=b_ub, A_eq=matrix[np.where(equal)[0]], b_eq=lower[equal],
                method=method, options={'time_limit': float(sys.argv[2])})
    print('         HiGHS, %s: %8.2f s of processor, status %d, value %.2f'
          % (method, time.process_time() - start, r.status, -r.fun if r.fun else 0.0), flush=True)
    done = r.status == 0
sys.exit(0 if done else 1)
)";

bool solve_by_highs(const staddle::lp::LinearProgram& program, double seconds) {
  const std::string data = "tract_bench_program.bin";
  const std::string script = "tract_bench_highs.py";
  std::FILE* file = std::fopen(data.c_str(), "wb");
  std::FILE* text = std::fopen(script.c_str(), "w");
  if (file == nullptr || text == nullptr) return false;
  std::fputs(highs_script, text);
  std::fclose(text);
  const auto put = [&](const auto& values) {
    std::fwrite(values.data(), sizeof values[0], values.size(), file);
  };
  std::vector<long> sizes = {static_cast<long>(program.columns.size()),
                             static_cast<long>(program.rows.size()),
                             static_cast<long>(program.entries.size())};
  std::vector<double> cost, lower, upper, value;
  std::vector<long> row, column;
  for (const auto& c : program.columns) cost.push_back(c.cost);
  for (const auto& r : program.rows) lower.push_back(r.lower), upper.push_back(r.upper);
  for (const auto& e : program.entries) {
    row.push_back(static_cast<long>(e.row));
    column.push_back(static_cast<long>(e.column));
    value.push_back(e.value);
  }
  put(sizes), put(cost), put(lower), put(upper), put(row), put(column), put(value);
  std::fclose(file);
  const std::string command =
      "/usr/bin/python3 " + script + " " + data + " " + std::to_string(seconds);
  const int status = std::system(command.c_str());
  std::remove(data.c_str());
  std::remove(script.c_str());
  return status == 0;
}

void compare_with_enumerated(int from_stands, int most_stands, double seconds) {
  bool glpk = true;
  bool highs = true;
  for (int stands = from_stands; stands <= most_stands && (glpk || highs); stands *= 2) {
    const TractProblem tract = tract_of(stands);
    solve_by_generation(tract, 0.0, 1, false);
    const Clock clock;
    const staddle::lp::LinearProgram program = enumerated(tract);
    std::printf("         all regimes made into columns: %8.2f s of processor\n",
                clock.of_processor());
    if (glpk) glpk = solve_by_glpk(program, seconds);
    if (highs) highs = solve_by_highs(program, seconds);
  }
}

}  // namespace

int main(int argc, char** argv) {
  int stands = 1000;
  double gap = 1e-4;
  int from = 10;
  double seconds = 600.0;
  unsigned threads = 0;
  bool rounds = false;
  bool all = false;
  bool whole = false;
  for (int i = 1; i < argc; ++i) {
    const auto number = [&] { return i + 1 < argc ? std::atof(argv[++i]) : 0.0; };
    if (std::strcmp(argv[i], "--stands") == 0) stands = static_cast<int>(number());
    if (std::strcmp(argv[i], "--from") == 0) from = static_cast<int>(number());
    if (std::strcmp(argv[i], "--gap") == 0) gap = number();
    if (std::strcmp(argv[i], "--seconds") == 0) seconds = number();
    if (std::strcmp(argv[i], "--threads") == 0) threads = static_cast<unsigned>(number());
    if (std::strcmp(argv[i], "--rounds") == 0) rounds = true;
    if (std::strcmp(argv[i], "--whole") == 0) whole = true;
    if (std::strcmp(argv[i], "--enumerated") == 0) all = true;
  }
  if (all) {
    compare_with_enumerated(from, stands, seconds);
  } else {
    TractProblem tract = tract_of(stands);
    if (whole) ask_for_whole_stands(tract);
    solve_by_generation(tract, gap, threads, rounds);
  }
  return 0;
}
