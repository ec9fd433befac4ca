// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "optimise/describe.h"
#include "optimise/random_problem.h"
#include "support/seed.h"

namespace staddle::support {
namespace {

// Larger lattices than this are drawn again: the baseline values every regime.
constexpr double largest_lattice = 40000;

StandSolution solve_by(StandOptions::Method method, const StandProblem& problem) {
  StandOptions options;
  options.method = method;
  options.windows = options.by_count = true;
  return solve(problem, options);
}

void check_twins(const std::string& tag, const ProblemKind& kind, std::size_t lattices) {
  const TaggedSeed seed(tag);
  std::size_t checked = 0;
  for (std::uint64_t number = 0; checked < lattices; ++number) {
    RandomStream random = seed.stream(number);
    const StandProblem problem = random_problem(random, kind);
    StandOptions stopped;
    std::stop_source source;
    source.request_stop();
    stopped.stop = source.get_token();
    if (solve(problem, stopped).certificate.lattice_regimes > largest_lattice) continue;
    ++checked;
    CAPTURE(number);
    const StandSolution plain = solve_by(StandOptions::Method::exhaustive, problem);
    const StandSolution fast = solve_by(StandOptions::Method::automatic, problem);
    REQUIRE(describe(fast) == describe(plain));
    REQUIRE(static_cast<double>(plain.certificate.regimes_valued) <=
            plain.certificate.lattice_regimes);
  }
}

}  // namespace

TEST_CASE("the proved search answers as the exhaustive one without storms") {
  check_twins("twins without storms", {}, 200);
}

TEST_CASE("the proved search answers as the exhaustive one with storms") {
  check_twins("twins with storms", {.storms = true, .years = 12}, 100);
}

TEST_CASE("the proved search answers as the exhaustive one with three thinnings") {
  check_twins("twins of three", {.max_thinnings = 3, .just_so = true, .removals = 3, .years = 14},
              12);
  check_twins("stormy twins of three",
              {.storms = true, .max_thinnings = 3, .just_so = true, .removals = 2, .years = 12}, 6);
}

TEST_CASE("the count of regimes is that of an exhaustive search without limits on the stand") {
  StandProblem problem = plain_problem();
  problem.lattice.guards = {};
  problem.lattice.removal_fractions = {0.05, 0.1, 0.2};
  StandOptions options;
  options.method = StandOptions::Method::exhaustive;
  for (int thinnings = 0; thinnings <= 3; ++thinnings) {
    problem.lattice.max_thinnings = thinnings;
    const StandSolution solution = solve(problem, options);
    CHECK(static_cast<double>(solution.certificate.regimes_valued) ==
          solution.certificate.lattice_regimes);
  }
}

}  // namespace staddle::support
