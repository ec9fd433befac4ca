// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/table_bounds.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "optimise/random_problem.h"
#include "support/seed.h"

namespace staddle::support {
namespace {

// The worth of every final harvest of the stretch after one random cut or two, none of them
// above its bound by more than rounding; counts how many were held, and how far away.
struct Held {
  int harvests = 0;
  double bound = 0, value = 0;
};

void hold(const StandProblem& problem, RandomStream& random, Held& held) {
  const CaseKernel kernel(problem.stand_case);
  const LatticeRules rules(problem, kernel);
  if (rules.final_from() > rules.final_to() || rules.cut_from() > rules.cut_to()) return;
  const TableBounds bounds(kernel, rules);
  StandPoint point = kernel.start();
  Cut cut;
  for (int cuts = 1 + static_cast<int>(random.next_below(2)); cuts > 0; --cuts) {
    const int to = rules.next_cut_from(point) +
                   static_cast<int>(random.next_below(static_cast<std::uint64_t>(12)));
    if (to > rules.cut_to()) break;
    StandPoint next = point;
    Measured then;
    while (next.age_yr < to) kernel.advance(next, then);
    kernel.measure_tons(next, then);
    const double removal = rules.removals()[random.next_below(rules.removals().size())];
    if (!then.timber || !rules.leaves_trees(removal, next.entries)) break;
    kernel.work_out_cut(next, then, removal, cut);
    kernel.take_cut(next, then, cut);
    point = next;
  }
  if (point.entries == 0) return;
  const int from = std::max(point.age_yr, rules.final_from());
  std::vector<double> bound(static_cast<std::size_t>(rules.final_to()) + 1);
  bounds.bound(point, from, bound);
  Measured measured;
  while (true) {
    if (point.age_yr >= from) {
      kernel.measure_tons(point, measured);
      const double value = kernel.objective(kernel.harvest(point, measured));
      const double most = bound[static_cast<std::size_t>(point.age_yr)];
      INFO("age " << point.age_yr << ", worth " << value << ", bound " << most);
      REQUIRE(value <= most + 1e-7);
      ++held.harvests;
      held.bound += most;
      held.value += value;
    }
    if (point.age_yr >= rules.final_to()) return;
    kernel.advance(point, measured);
  }
}

}  // namespace

TEST_CASE("no final harvest by a yield table is worth more than its bound") {
  const TaggedSeed seed("bounds of tables");
  Held held;
  for (std::uint64_t number = 0; number < 400; ++number) {
    CAPTURE(number);
    RandomStream random = seed.stream(number);
    const StandProblem problem = random_problem(random, {.tables = true});
    for (int draw = 0; draw < 5; ++draw) hold(problem, random, held);
  }
  CHECK(held.harvests > 5000);
  // And on the whole it is not far above.
  CHECK(held.bound - held.value < 60.0 * held.harvests);
}

}  // namespace staddle::support
