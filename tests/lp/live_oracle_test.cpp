// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>
#include <sstream>
#include <string>
#include <vector>

#include "lp/free_mps.h"
#include "lp/named_programs.h"
#include "lp/random_program.h"
#include "lp/solve.h"
#include "support/files.h"
#include "support/near.h"
#include "support/not_run.h"
#include "support/program.h"
#include "support/seed.h"

// The same programs given to solvers that share no code with ours.
namespace staddle::lp {
namespace {

using support::within;

std::vector<LinearProgram> programs(const std::string& tag, bool whole) {
  const support::TaggedSeed seed(tag);
  RandomStream random = seed.stream();
  std::vector<LinearProgram> all;
  for (int trial = 0; trial < 60; ++trial) {
    const std::size_t size = 2 + random.next_below(whole ? 7 : 25);
    all.push_back(random_program(
        random, {.rows = size, .columns = size + random.next_below(6), .whole = whole}));
  }
  if (whole) return all;
  for (const NamedProgram& named : named_programs()) {
    if (!named.program.columns.empty()) all.push_back(named.program);
  }
  return all;
}

struct Verdict {
  Status status;
  double value;
};

// A program with neither point nor limit may be called either.
void check_agreement(const LinearProgram& program, const Verdict& oracle) {
  const Solution solution = solve(program);
  CAPTURE(solution.message);
  REQUIRE(solution.status != Status::numerical_trouble);
  CHECK((solution.status == Status::optimal) == (oracle.status == Status::optimal));
  if (solution.status != Status::optimal) return;
  CHECK(solution.value ==
        within(oracle.value, support::two_methods * (1.0 + std::fabs(oracle.value))));
}

// ---- SciPy, whose milp() runs HiGHS ----

// Reads, for each program: sizes and sign, then costs, bounds, kinds, row bounds, entries.
const char* const scipy_script = R"(
import sys
import numpy as np
from scipy.optimize import milp, LinearConstraint, Bounds
words = iter(sys.stdin.read().split())
count = lambda: int(next(words))
numbers = lambda n: np.array([float(next(words)) for _ in range(n)])
for _ in range(count()):
    n, m, entries, sign = count(), count(), count(), count()
    cost, lower, upper, whole = numbers(n), numbers(n), numbers(n), numbers(n)
    row_lower, row_upper = numbers(m), numbers(m)
    a = np.zeros((m, n))
    for _ in range(entries):
        i, j = count(), count()
        a[i, j] = float(next(words))
    limits = [LinearConstraint(a, row_lower, row_upper)] if m else []
    r = milp(sign * cost, integrality=whole, bounds=Bounds(lower, upper), constraints=limits)
    print(r.status, repr(float(sign * r.fun)) if r.status == 0 else 'none')
)";

std::string as_words(const LinearProgram& program) {
  std::ostringstream out;
  out << program.columns.size() << ' ' << program.rows.size() << ' ' << program.entries.size()
      << (program.direction == Direction::minimise ? " 1\n" : " -1\n");
  for (const Column& column : program.columns) out << exact(column.cost) << ' ';
  for (const Column& column : program.columns) out << exact(column.lower) << ' ';
  for (const Column& column : program.columns) out << exact(column.upper) << ' ';
  for (const Column& column : program.columns) out << (column.whole ? "1 " : "0 ");
  for (const Row& row : program.rows) out << exact(row.lower) << ' ';
  for (const Row& row : program.rows) out << exact(row.upper) << ' ';
  for (const Entry& entry : program.entries) {
    out << entry.row << ' ' << entry.column << ' ' << exact(entry.value) << '\n';
  }
  return out.str();
}

void compare_with_scipy(const std::vector<LinearProgram>& all) {
  const std::string python = "/usr/bin/python3";
  if (support::run_program(python, {"-c", "import scipy.optimize"}).exit_code != 0) {
    return support::not_run("SciPy is not installed");
  }
  std::string input = std::to_string(all.size()) + "\n";
  for (const LinearProgram& program : all) input += as_words(program);
  const support::Run run = support::run_program(python, {"-c", scipy_script}, input);
  CAPTURE(run.err);
  REQUIRE(run.exit_code == 0);
  std::istringstream lines(run.out);
  for (const LinearProgram& program : all) {
    int status = 0;
    std::string value;
    REQUIRE(lines >> status >> value);
    if (status == 0) {
      check_agreement(program, {Status::optimal, std::stod(value) + program.constant});
    } else {
      check_agreement(program, {Status::infeasible, 0.0});
    }
  }
}

TEST_CASE("random programs agree with HiGHS of SciPy") {
  compare_with_scipy(programs("scipy", false));
}

TEST_CASE("random whole programs agree with HiGHS of SciPy") {
  compare_with_scipy(programs("scipy, whole", true));
}

// ---- clp, of COIN-OR, which reads files in the free MPS format ----

TEST_CASE("random programs agree with clp") {
  if (!support::program_exists("clp")) return support::not_run("clp is not installed");
  const support::TemporaryDirectory directory;
  for (const LinearProgram& program : programs("clp", false)) {
    const std::string model = directory.write("model.mps", as_free_mps(program));
    CAPTURE(as_free_mps(program));
    const support::Run run = support::run_program("clp", {model, "-solve"});
    REQUIRE(run.exit_code == 0);
    REQUIRE_THAT(run.out, Catch::Matchers::Contains("Model was imported"));
    // "Optimal objective 36 - 2 iterations", to ten digits.
    const std::string before = "Optimal objective ";
    const std::size_t at = run.out.find(before);
    const bool optimal = at != std::string::npos;
    const double least = optimal ? std::stod(run.out.substr(at + before.size())) : 0.0;
    const double sign = program.direction == Direction::minimise ? 1.0 : -1.0;
    check_agreement(
        program, {optimal ? Status::optimal : Status::infeasible, sign * least + program.constant});
  }
}

}  // namespace
}  // namespace staddle::lp
