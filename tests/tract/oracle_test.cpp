// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <sstream>

#include "lp/free_mps.h"
#include "lp/solve.h"
#include "staddle/tract/solve.h"
#include "support/files.h"
#include "support/near.h"
#include "support/not_run.h"
#include "support/program.h"
#include "support/seed.h"
#include "tract/made_ready.h"
#include "tract/small_tracts.h"

// Small tracts with every regime of every stand in one linear program, given to solvers
// that share no code with ours.
namespace staddle {
namespace {

using support::MadeReady;
using Status = TractSolution::Status;

// Limits of the last rows, in the order of the tract's.
lp::LinearProgram enumerated(const MadeReady& made) {
  lp::LinearProgram program{lp::Direction::maximise};
  for (const StandModel& model : made.models) program.add_row({model.acres, model.acres});
  for (const LimitRow& row : made.limits.rows) {
    program.add_row(row.is_floor ? lp::Row{row.bound, lp::infinity}
                                 : lp::Row{-lp::infinity, row.bound});
  }
  for (const TractColumn& column : made.all_columns()) {
    std::vector<lp::Term> terms = {{column.stand, 1.0}};
    for (const lp::Term& use : column.uses) {
      terms.push_back({made.models.size() + use.index, use.value});
    }
    program.add_column({.cost = column.value}, terms);
  }
  return program;
}

// The best that any plan earns at these worths: above every plan's value.
double bound_at(const MadeReady& made, const std::vector<TractColumn>& columns,
                const std::vector<double>& worths) {
  std::vector<double> best(made.models.size(), -lp::infinity);
  for (const TractColumn& column : columns) {
    best[column.stand] = std::max(best[column.stand], worth_of(column, worths));
  }
  double bound = 0.0;
  for (std::size_t s = 0; s < best.size(); ++s) bound += made.models[s].acres * best[s];
  for (std::size_t r = 0; r < worths.size(); ++r) {
    bound -= worths[r] * made.limits.rows[r].bound;
  }
  return bound;
}

std::vector<double> worths_told(const MadeReady& made, const TractSolution& solution) {
  std::vector<double> worths(made.limits.rows.size(), 0.0);
  for (const LimitCost& cost : solution.limit_costs) {
    for (std::size_t r = 0; r < worths.size(); ++r) {
      const LimitRow& row = made.limits.rows[r];
      const bool here = row.limit == cost.limit && row.of == cost.of &&
                        row.is_floor == cost.is_floor && row.from_year == cost.from_year &&
                        row.to_year == cost.to_year;
      if (here) worths[r] = row.is_floor ? cost.shadow_price : -cost.shadow_price;
    }
  }
  return worths;
}

std::vector<TractProblem> tracts(const std::string& tag, int count) {
  const support::TaggedSeed seed(tag);
  RandomStream random = seed.stream();
  std::vector<TractProblem> all;
  for (int i = 0; i < count; ++i) {
    all.push_back(support::random_tract(random, {2 + i % 4, i % 3 == 2}));
    support::add_random_limits(random, all.back());
  }
  return all;
}

// Of each program in turn: sizes, costs, row bounds, entries. Prints the value and the
// marginals of the rows, or "none".
const char* const highs_script = R"(
import sys
import numpy as np
from scipy.optimize import linprog
from scipy.sparse import coo_matrix
words = iter(sys.stdin.read().split())
count = lambda: int(next(words))
numbers = lambda n: np.array([float(next(words)) for _ in range(n)])
for _ in range(count()):
    n, m, entries = count(), count(), count()
    cost, lower, upper = numbers(n), numbers(m), numbers(m)
    i, j, a = np.zeros(entries, int), np.zeros(entries, int), np.zeros(entries)
    for k in range(entries):
        i[k], j[k], a[k] = count(), count(), float(next(words))
    matrix = coo_matrix((a, (i, j)), shape=(m, n)).tocsr()
    equal = lower == upper
    floor = np.isfinite(lower) & ~equal
    cap = ~equal & ~floor
    sign = np.where(floor, -1.0, 1.0)
    rows = np.where(~equal)[0]
    a_ub = matrix[rows].multiply(sign[rows][:, None]).tocsr() if len(rows) else None
    b_ub = np.where(floor, -lower, upper)[rows] if len(rows) else None
    ask = lambda presolve: linprog(-cost, A_ub=a_ub, b_ub=b_ub, A_eq=matrix[np.where(equal)[0]],
                                   b_eq=lower[equal], method='highs',
                                   options={'presolve': presolve})
    r = ask(True)
    if r.status == 4:  # presolving cannot always tell why there is no answer
        r = ask(False)
    if r.status == 0:
        worths = -r.ineqlin.marginals * -sign[rows] if len(rows) else []
        print(repr(float(-r.fun)), *[repr(float(w)) for w in worths])
    else:
        print('none' if r.status == 2 else 'trouble')
)";

std::string as_words(const lp::LinearProgram& program) {
  std::ostringstream out;
  out << program.columns.size() << ' ' << program.rows.size() << ' ' << program.entries.size()
      << '\n';
  for (const lp::Column& column : program.columns) out << lp::exact(column.cost) << ' ';
  for (const lp::Row& row : program.rows) out << lp::exact(row.lower) << ' ';
  for (const lp::Row& row : program.rows) out << lp::exact(row.upper) << ' ';
  for (const lp::Entry& entry : program.entries) {
    out << entry.row << ' ' << entry.column << ' ' << lp::exact(entry.value) << '\n';
  }
  return out.str();
}

// Alike, or where the prices of the limits are not unique, another set of them that
// proves the same value.
void check_shadow_prices(const MadeReady& made, const TractSolution& solution,
                         const std::vector<double>& of_oracle) {
  const std::vector<TractColumn> columns = made.all_columns();
  const double value = solution.present_value.in(dollars);
  const double slack = support::two_methods * 10.0 * (1.0 + std::fabs(value));
  CHECK(bound_at(made, columns, of_oracle) == support::within(value, slack));
  CHECK(bound_at(made, columns, worths_told(made, solution)) == support::within(value, slack));
}

TEST_CASE("column generation agrees with the enumerated program solved by HiGHS") {
  const std::string python = "/usr/bin/python3";
  if (support::run_program(python, {"-c", "import scipy.optimize"}).exit_code != 0) {
    return support::not_run("SciPy is not installed");
  }
  const std::vector<TractProblem> all = tracts("tracts, HiGHS", 30);
  std::string input = std::to_string(all.size()) + "\n";
  for (const TractProblem& problem : all) input += as_words(enumerated(MadeReady(problem)));
  const support::Run run = support::run_program(python, {"-c", highs_script}, input);
  CAPTURE(run.err);
  REQUIRE(run.exit_code == 0);
  std::istringstream lines(run.out);
  int solved = 0;
  int impossible = 0;
  for (std::size_t i = 0; i < all.size(); ++i) {
    CAPTURE(i);
    std::string line;
    REQUIRE(std::getline(lines, line));
    const TractSolution solution = solve(all[i]).value();
    if (line == "none") {
      CHECK(solution.status == Status::infeasible);
      CHECK_FALSE(solution.conflicts.empty());
      ++impossible;
      continue;
    }
    ++solved;
    REQUIRE(solution.status == Status::optimal);
    std::istringstream numbers(line);
    double value = 0.0;
    REQUIRE(numbers >> value);
    CHECK(solution.present_value.in(dollars) ==
          support::within(value, support::two_methods * 10.0 * (1.0 + std::fabs(value))));
    std::vector<double> of_oracle;
    for (double worth = 0.0; numbers >> worth;) of_oracle.push_back(worth);
    const MadeReady made(all[i]);
    REQUIRE(of_oracle.size() == made.limits.rows.size());
    check_shadow_prices(made, solution, of_oracle);
  }
  CHECK(solved > 5);
  CHECK(impossible > 2);
}

TEST_CASE("column generation agrees with the enumerated program solved by clp") {
  if (!support::program_exists("clp")) return support::not_run("clp is not installed");
  const support::TemporaryDirectory directory;
  for (const TractProblem& problem : tracts("tracts, clp", 12)) {
    const std::string model =
        directory.write("model.mps", lp::as_free_mps(enumerated(MadeReady(problem))));
    const support::Run run = support::run_program("clp", {model, "-solve"});
    REQUIRE(run.exit_code == 0);
    // "Optimal objective 36 - 2 iterations", to ten digits.
    const std::string before = "Optimal objective ";
    const std::size_t at = run.out.find(before);
    const TractSolution solution = solve(problem).value();
    CHECK((at != std::string::npos) == (solution.status == Status::optimal));
    if (at == std::string::npos) continue;
    const double value = -std::stod(run.out.substr(at + before.size()));
    CHECK(solution.present_value.in(dollars) ==
          support::within(value, support::two_methods * 10.0 * (1.0 + std::fabs(value))));
  }
}

}  // namespace
}  // namespace staddle
