// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "optimise/describe.h"
#include "optimise/random_problem.h"
#include "optimise/regime_pool_filter.h"
#include "staddle/optimise/regime_pool.h"
#include "staddle/optimise/solve.h"
#include "support/seed.h"

namespace staddle {
namespace {

using support::ProblemKind;

double between(RandomStream& random, double low, double high) {
  return low + (high - low) * random.next_uniform();
}

// Prices within a half of the problem's own; now and then other factors and discounts,
// another establishment cost, another land value.
PriceVector random_vector(RandomStream& random, const StandProblem& problem, bool own_factors) {
  const StandCase& stand = problem.stand_case;
  PriceVector vector{stand.prices, stand.costs.establishment * between(random, 0.5, 1.5),
                     stand.land_value + dollars_per_acre(between(random, -300, 300))};
  for (ProductPrice& price : vector.prices) {
    price.stumpage = price.stumpage * between(random, 0.5, 1.5);
    if (own_factors) price.thinning_factor = between(random, 0.3, 1.1);
  }
  return vector;
}

StandProblem with_money(StandProblem problem, const PriceVector& vector) {
  problem.stand_case.prices = vector.prices;
  problem.stand_case.costs.establishment = vector.establishment;
  problem.stand_case.land_value = vector.land_value;
  return problem;
}

// Every vector's answer against a search of its own.
int compare(RandomStream& random, const StandProblem& problem, int rates, int vectors) {
  if (!RegimePool::can_hold(problem)) return 0;
  const RegimePool pool(problem);
  int cells = 0;
  for (int i = 0; i < rates; ++i) {
    StandProblem at_rate = problem;
    at_rate.stand_case.costs.rate = DiscountRate::real(between(random, 0.02, 0.09));
    const bool own_factors = random.next_uniform() < 0.4;
    std::vector<PriceVector> asked;
    for (int j = 0; j < vectors; ++j) asked.push_back(random_vector(random, problem, own_factors));
    const PricedPool priced = pool.priced(at_rate.stand_case.costs, asked);
    for (const PriceVector& vector : asked) {
      const StandProblem cell = with_money(at_rate, vector);
      const StandSolution alone = solve(cell);
      REQUIRE(alone.status == StandSolution::Status::optimal);
      REQUIRE(support::describe(priced.best(vector)) == support::describe(alone.best));
      ++cells;
    }
  }
  return cells;
}

// Larger lattices than this are drawn again.
constexpr double largest_lattice = 60000;

}  // namespace

TEST_CASE("a pool answers 320 random cells exactly as searches of their own do") {
  const support::TaggedSeed seed("regime pool");
  int cells = 0, stormy = 0, standing = 0;
  for (std::uint64_t number = 0; cells < 320; ++number) {
    CAPTURE(number);
    RandomStream random = seed.stream(number);
    ProblemKind kind;
    kind.storms = number % 3 == 0;
    const StandProblem problem = support::random_problem(random, kind);
    if (!RegimePool::can_hold(problem)) continue;
    if (RegimePool::lattice_regimes(problem) > largest_lattice) continue;
    const int more = compare(random, problem, 2, 5);
    cells += more;
    if (kind.storms) stormy += more;
    if (problem.stand_case.standing) standing += more;
  }
  CHECK(stormy >= 60);
  CHECK(standing >= 60);
}

TEST_CASE("a pool of one vector keeps little more than its best regimes") {
  const StandProblem problem = support::plain_problem();
  const RegimePool pool(problem);
  const StandCase& stand = problem.stand_case;
  const PriceVector own{stand.prices, stand.costs.establishment, stand.land_value};
  const PricedPool priced = pool.priced(stand.costs, {own});
  CHECK(priced.kept() < 5);
  CHECK(support::describe(priced.best(own)) == support::describe(solve(problem).best));
}

TEST_CASE("regimes that tie everywhere are both kept for the tie rule") {
  const std::vector<double> points = {1.0, 2.0, 3.0, 4.0};
  DominanceFilter filter(2, points);
  const double row[] = {5.0, 7.0}, less[] = {5.0, 6.9};
  filter.offer(row, 0, 30);
  filter.offer(less, 1, 30);
  filter.offer(row, 2, 30);
  filter.finish();
  REQUIRE(filter.size() == 2);
  CHECK(filter.row(0).stretch == 0);
  CHECK(filter.row(1).stretch == 2);
}

TEST_CASE("a row is dropped only when another is worth more in every corner of the box") {
  // Between 1 and 3 in both coordinates the second row wins where the first is small.
  const std::vector<double> points = {1.0, 1.0, 3.0, 3.0};
  const double base[] = {2.0, 2.0};
  for (const bool wins_in_a_corner : {true, false}) {
    const double other[] = {wins_in_a_corner ? 0.9 : 0.5, wins_in_a_corner ? 2.6 : 2.2};
    DominanceFilter filter(2, points);
    filter.offer(base, 0, 30);
    filter.offer(other, 1, 30);
    filter.finish();
    CHECK(filter.size() == (wins_in_a_corner ? 2 : 1));
  }
}

}  // namespace staddle
