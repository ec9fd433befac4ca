// SPDX-License-Identifier: GPL-3.0-or-later
#include "lp/glpk_model.h"

#include <catch2/catch.hpp>

#include "lp/named_programs.h"
#include "support/near.h"

// GLPK's own way to fail: it reports and then calls abort(), unless its hook leaves.
extern "C" void glp_assert_(const char* expression, const char* file, int line);

namespace staddle::lp {
namespace {

using support::within;

TEST_CASE("error inside GLPK comes back as words and nothing is printed") {
  const std::string words = run_guarded([] { glp_assert_("two == three", "somewhere.c", 7); });
  CHECK_THAT(words, Catch::Matchers::Contains("two == three"));
  CHECK(run_guarded([] {}).empty());
}

TEST_CASE("solver recovers from an error inside GLPK by starting afresh") {
  LinearProgramSolver solver(header_example());
  const double value = solver.solve().value;
  solver.add_column({.cost = 20, .upper = 1}, {{0, 1.0}});
  run_guarded([] { glp_assert_("lost", "somewhere.c", 1); });
  const Solution solution = solver.solve();
  REQUIRE(solution.status == Status::optimal);
  CHECK(solution.value > value);
  CHECK(solution.columns.size() == 4);
}

TEST_CASE("model is lost with its environment and can be built again") {
  GlpkModel model;
  CHECK_FALSE(model.alive());
  CHECK(model.build(header_example()).empty());
  CHECK(model.alive());
  run_guarded([] { glp_assert_("lost", "somewhere.c", 1); });
  CHECK_FALSE(model.alive());
  CHECK(model.build(header_example()).empty());
  const GlpkAnswer answer = model.solve(header_example(), {}, 0.0);
  CHECK(answer.status == Status::optimal);
  CHECK(answer.duals[0] == within(10.0 / 3.0, 1e-9));
}

}  // namespace
}  // namespace staddle::lp
