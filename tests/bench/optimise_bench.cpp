// SPDX-License-Identifier: GPL-3.0-or-later
// How much faster the proved search is than valuing every regime with the plain
// evaluator, on one thread, in one run: no number here is a test.
//
//   cmake -S . -B build -DBUILD_BENCHMARKS=ON && cmake --build build --target optimise_bench
//   build/tests/optimise_bench            all rows
//   build/tests/optimise_bench --quick    leaves out the baseline of the largest lattices
//
// Columns: regimes of the lattice, regimes that the proved search valued; milliseconds of
// the baseline, of the proved search, and of it with windows and counts; the ratio of the
// first two. Processor time of the least of several runs. Below: what all side questions
// of one advice take together, and what storms cost.
#include <algorithm>
#include <cstdio>
#include <cstring>
#include <ctime>
#include <string>
#include <vector>

#include "staddle/io/model_library.h"
#include "staddle/optimise/solve.h"

namespace {

using staddle::age;
using staddle::dollars_per_acre;
using staddle::dollars_per_ton;
using staddle::StandOptions;
using staddle::StandProblem;
using staddle::StandSolution;

constexpr int repetitions = 7;

double milliseconds_of(const StandProblem& problem, const StandOptions& options, int times,
                       StandSolution& solution) {
  double least = 1e300;
  for (int i = 0; i < times; ++i) {
    const std::clock_t start = std::clock();
    solution = solve(problem, options);
    const double taken = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC * 1000.0;
    least = std::min(least, taken);
  }
  return least;
}

std::vector<double> stepped(double from, double to, double step) {
  std::vector<double> values;
  for (int i = 0; from + i * step <= to + 1e-9; ++i) values.push_back(from + i * step);
  return values;
}

// Coastal fit, site 70, planted 600, 5 percent, 7/18/25, establishment 350; the defaults.
StandProblem default_problem() {
  const staddle::EquationSet& set = staddle::built_in_equation_sets().front();
  staddle::StandCase stand_case{
      staddle::GrowthModel::from_equations(set, staddle::feet(70), staddle::trees_per_acre(600)),
      staddle::Assortment::from_equations(set, staddle::default_products()),
      {{dollars_per_ton(25)}, {dollars_per_ton(18)}, {dollars_per_ton(7)}},
      {staddle::DiscountRate::real(0.05)},
      {}};
  stand_case.costs.establishment = dollars_per_acre(350);
  staddle::DecisionLattice lattice;
  lattice.removal_fractions = {0.20, 0.25, 0.30, 1.0 / 3.0, 0.40, 0.45, 0.50};
  lattice.guards = staddle::default_guards();
  return {stand_case, lattice, staddle::acres(40)};
}

StandProblem free_problem(int thinnings, double step) {
  StandProblem problem = default_problem();
  problem.lattice.guards = {};
  problem.lattice.max_thinnings = thinnings;
  if (step < 0.05) problem.lattice.removal_fractions = stepped(0.20, 0.50, step);
  return problem;
}

StandProblem wide_problem(int thinnings) {
  StandProblem problem = free_problem(thinnings, 0.05);
  problem.lattice.thinning_from = age(12);
  problem.lattice.thinning_to = age(40);
  problem.lattice.final_from = age(15);
  problem.lattice.final_to = age(60);
  return problem;
}

StandProblem at_the_coast(StandProblem problem) {
  for (const staddle::StormZone& zone : staddle::built_in_storm_zones()) {
    if (zone.id == "coast") {
      problem.stand_case.hazard = hazard_of_zone(zone, staddle::Species::loblolly, 5.0);
    }
  }
  return problem;
}

StandProblem standing(StandProblem problem) {
  problem.stand_case.standing = staddle::MeasuredStand{
      age(15), staddle::trees_per_acre(500), staddle::square_feet_per_acre(125), 0.39, {}, {}};
  problem.stand_case.land_value = dollars_per_acre(700);
  return problem;
}

void compare(const std::string& name, const StandProblem& problem, bool with_baseline) {
  StandOptions options;
  StandSolution fast, plain;
  const double proved = milliseconds_of(problem, options, repetitions, fast);
  options.windows = options.by_count = true;
  StandSolution full;
  const double asked = milliseconds_of(problem, options, repetitions, full);
  std::printf("%-34s %12.0f %9llu", name.c_str(), fast.certificate.lattice_regimes,
              static_cast<unsigned long long>(fast.certificate.regimes_valued));
  if (!with_baseline) {
    std::printf(" %10s %9.3f %9.3f\n", "-", proved, asked);
    return;
  }
  options.method = StandOptions::Method::exhaustive;
  const int times = fast.certificate.lattice_regimes > 3e5 ? 1 : 3;
  const double baseline = milliseconds_of(problem, options, times, plain);
  const bool agree = plain.best.value.objective == fast.best.value.objective;
  std::printf(" %10.2f %9.3f %9.3f %8.1f%s\n", baseline, proved, asked, baseline / proved,
              agree ? "" : "  DISAGREE");
}

// What the answer to one owner asks of the optimiser: the main question with windows and
// counts, guards lifted one at a time, prices and growth a fifth and a seventh up and down.
double side_questions(const StandProblem& problem) {
  std::vector<StandProblem> all(8, problem);
  all[0].lattice.guards.max_removal_fraction.reset();
  all[1].lattice.guards.min_residual_basal_area.reset();
  all[2].lattice.guards.min_live_crown_ratio.reset();
  all[3].lattice.guards.min_qmd.reset();
  all[4].stand_case.growth_multiplier = 0.85;
  all[5].stand_case.growth_multiplier = 1.15;
  for (auto& price : all[6].stand_case.prices) price.stumpage = price.stumpage * 0.8;
  for (auto& price : all[7].stand_case.prices) price.stumpage = price.stumpage * 1.2;
  // Without guards there is none to lift.
  if (!problem.lattice.guards.min_height) all.erase(all.begin(), all.begin() + 4);
  StandOptions options;
  StandSolution solution;
  double total = 0.0;
  for (const StandProblem& one : all) total += milliseconds_of(one, options, 3, solution);
  options.windows = options.by_count = true;
  return total + milliseconds_of(problem, options, 3, solution);
}

}  // namespace

int main(int count, char** arguments) {
  const bool quick = count > 1 && std::strcmp(arguments[1], "--quick") == 0;
  std::printf("%-34s %12s %9s %10s %9s %9s %8s\n", "lattice", "regimes", "valued", "baseline ms",
              "proved ms", "+windows", "ratio");
  compare("default guards", default_problem(), true);
  compare("default guards, standing", standing(default_problem()), true);
  compare("no guards, 2 cuts, 5 %", free_problem(2, 0.05), true);
  compare("no guards, 3 cuts, 5 %", free_problem(3, 0.05), true);
  compare("no guards, 2 cuts, 1 %", free_problem(2, 0.01), true);
  compare("no guards, 3 cuts, wide", wide_problem(3), !quick);
  compare("default guards, coast", at_the_coast(default_problem()), true);
  compare("no guards, 2 cuts, 5 %, coast", at_the_coast(free_problem(2, 0.05)), true);
  compare("no guards, 3 cuts, 5 %, coast", at_the_coast(free_problem(3, 0.05)), !quick);
  std::printf("\nside questions of one advice, ms: default guards %.2f, standing %.2f, "
              "no guards wide 3 cuts %.2f\n",
              side_questions(default_problem()), side_questions(standing(default_problem())),
              side_questions(wide_problem(3)));
  StandSolution solution;
  const double calm = milliseconds_of(free_problem(2, 0.05), {}, repetitions, solution);
  const double storms =
      milliseconds_of(at_the_coast(free_problem(2, 0.05)), {}, repetitions, solution);
  std::printf("storms cost %.2f times the search without them\n", storms / calm);
  return 0;
}
