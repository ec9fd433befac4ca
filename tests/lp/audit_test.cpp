// SPDX-License-Identifier: GPL-3.0-or-later
#include "lp/audit.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "lp/named_programs.h"
#include "lp/solve.h"
#include "staddle/base/contract.h"
#include "staddle/base/tolerance.h"

namespace staddle::lp {
namespace {

using Catch::Matchers::Contains;

// max 3x + 5y; x <= 4; 2y <= 12; 3x + 2y <= 18, its exact answer written out.
struct Example {
  LinearProgram program = named_programs().front().program;
  Solution solution;

  Example() {
    solution.status = Status::optimal;
    solution.columns = {2, 6};
    solution.rows = {2, 12, 18};
    solution.duals = {0, 1.5, 1};
    solution.reduced_costs = {0, 0};
    solution.value = solution.bound = 36;
  }
  std::string failure() const { return audit(program, solution).failure(); }
};

TEST_CASE("exact answer passes the audit without a trace") {
  const Example example;
  const Audit found = audit(example.program, example.solution);
  CHECK(found.passed());
  CHECK(found.rows == 0.0);
  CHECK(found.complementarity == 0.0);
  CHECK(found.gap == 0.0);
}

TEST_CASE("each way to be wrong is seen and named") {
  Example example;
  SECTION("point outside a row") {
    example.solution.columns = {4, 6};
    example.solution.rows = {4, 12, 24};
    example.solution.value = example.solution.bound = 42;
    CHECK_THAT(example.failure(), Contains("rows"));
  }
  SECTION("point outside a bound") {
    example.program.columns[1].upper = 5.99;
    CHECK_THAT(example.failure(), Contains("bounds"));
  }
  SECTION("row reported otherwise than it is") {
    example.solution.rows[0] = 2.01;
    CHECK_THAT(example.failure(), Contains("rows"));
  }
  SECTION("value reported otherwise than it is") {
    example.solution.value = example.solution.bound = 36.01;
    CHECK_THAT(example.failure(), Contains("value"));
  }
  SECTION("value better than the bound") {
    example.solution.bound = 35.9;
    CHECK_THAT(example.failure(), Contains("value"));
  }
  SECTION("point that is feasible but not best") {
    example.solution.columns = {2, 5};
    example.solution.rows = {2, 10, 16};
    example.solution.value = example.solution.bound = 31;
    CHECK_THAT(example.failure(), Contains("gap") || Contains("complementarity"));
  }
  SECTION("dual of the wrong sign") {
    example.program.rows[1] = {12, infinity};  // the same point, held from below
    CHECK(audit(example.program, example.solution).dual_signs > 1.0);
    CHECK_FALSE(example.failure().empty());
  }
  SECTION("dual of a row that does not bind") {
    example.solution.duals[0] = 0.01;
    example.solution.reduced_costs[0] = -0.01;
    CHECK_FALSE(example.failure().empty());
  }
  SECTION("reduced cost reported otherwise than it is") {
    example.solution.reduced_costs[0] = 0.5;
    CHECK_THAT(example.failure(), Contains("reduced costs"));
  }
  SECTION("reduced cost that calls for more of a column") {
    example.solution.duals[2] = 0.9;
    example.solution.reduced_costs = {0.3, 0.2};
    CHECK(audit(example.program, example.solution).dual_signs > 1.0);
  }
  SECTION("number that is none") {
    example.solution.columns[0] = std::nan("");
    CHECK_FALSE(example.failure().empty());
  }
}

TEST_CASE("row passes just inside what is allowed and fails just outside") {
  const double magnitude = 18.0;  // the largest of 3 x 2, 2 x 6 and the bound
  const double allowed = tolerance::lp_absolute + tolerance::lp_relative * magnitude;
  Example example;
  example.program.rows[2].upper = 18.0;
  const auto figure = [&example](double beyond) {
    example.solution.columns[0] = 2.0 + beyond / 3.0;
    return audit(example.program, example.solution).rows;
  };
  CHECK(figure(0.99 * allowed) < 1.0);
  CHECK(figure(1.01 * allowed) > 1.0);
}

TEST_CASE("what is allowed grows with the numbers that enter") {
  Example example;
  for (double& row : example.solution.rows) row *= 1e9;
  for (double& column : example.solution.columns) column *= 1e9;
  for (Row& row : example.program.rows) row.upper *= 1e9;
  example.solution.value = example.solution.bound = 36e9;
  CHECK(audit(example.program, example.solution).passed());
  example.solution.columns[0] += 0.5;  // 1.5 beyond a row of 18e9, where 18 are allowed
  CHECK(audit(example.program, example.solution).rows < 1.0);
}

TEST_CASE("whole numbers are audited without duals") {
  Example example;
  for (Column& column : example.program.columns) column.whole = true;
  example.solution.duals.clear();
  example.solution.reduced_costs.clear();
  CHECK(audit(example.program, example.solution).passed());
  example.solution.columns[0] -= 1e-5;
  CHECK(audit(example.program, example.solution).whole > 1.0);
  CHECK_FALSE(example.failure().empty());
}

TEST_CASE("audit refuses vectors of the wrong length") {
  Example example;
  SECTION("columns") { example.solution.columns.pop_back(); }
  SECTION("rows") { example.solution.rows.pop_back(); }
  SECTION("duals") { example.solution.duals.clear(); }
  SECTION("reduced costs") { example.solution.reduced_costs.clear(); }
  CHECK_THROWS_AS(audit(example.program, example.solution), ContractViolation);
}

}  // namespace
}  // namespace staddle::lp
