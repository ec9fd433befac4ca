// SPDX-License-Identifier: GPL-3.0-or-later
#include "lp/named_programs.h"

#include <catch2/catch.hpp>

#include "lp/audit.h"
#include "lp/solve.h"
#include "support/near.h"

namespace staddle::lp {
namespace {

using support::within;

void check_values(const std::vector<double>& found, const std::vector<double>& expected) {
  if (expected.empty()) return;
  REQUIRE(found.size() == expected.size());
  for (std::size_t i = 0; i < expected.size(); ++i) {
    CAPTURE(i);
    CHECK(found[i] == within(expected[i], 1e-9));
  }
}

void check_answer(const NamedProgram& named, const Options& options) {
  CAPTURE(named.name, options.presolve, options.simplex == Simplex::dual);
  const Solution solution = solve(named.program, options);
  CHECK(solution.status == named.status);
  CHECK_FALSE(solution.message.empty());
  CHECK(solution.audit_failure.empty());
  if (named.status != Status::optimal) {
    CHECK(solution.columns.empty());
    CHECK_FALSE(solution.has_point());
    return;
  }
  CHECK(solution.value == within(named.value, 1e-9));
  CHECK(solution.bound == solution.value);
  check_values(solution.columns, named.columns);
  check_values(solution.duals, named.duals);
  check_values(solution.reduced_costs, named.reduced_costs);
  CHECK(audit(named.program, solution).passed());
}

TEST_CASE("named programs have their answers by either method with and without presolving") {
  for (const NamedProgram& named : named_programs()) {
    for (const Simplex simplex : {Simplex::primal, Simplex::dual}) {
      for (const bool presolve : {false, true}) {
        check_answer(named, {.simplex = simplex, .presolve = presolve});
      }
    }
  }
}

TEST_CASE("header example") {
  const Solution solution = solve(header_example());
  REQUIRE(solution.status == Status::optimal);
  CHECK(solution.value == within(2200.0 / 3.0, 1e-9));
  check_values(solution.columns, {100.0 / 3.0, 200.0 / 3.0, 0.0});
  check_values(solution.duals, {10.0 / 3.0, 2.0 / 3.0, 0.0});
}

TEST_CASE("dual is the change of the value as its row's bound is raised") {
  for (const NamedProgram& named : named_programs()) {
    if (named.duals.empty() || named.columns.empty()) continue;
    for (std::size_t i = 0; i < named.program.rows.size(); ++i) {
      CAPTURE(named.name, i);
      NamedProgram raised = named;
      const double step = 1e-3;
      raised.program.rows[i].lower += step;
      raised.program.rows[i].upper += step;
      const double change = solve(raised.program).value - named.value;
      CHECK(change / step == within(named.duals[i], 1e-6));
    }
  }
}

}  // namespace
}  // namespace staddle::lp
