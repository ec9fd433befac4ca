// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/base/best_of_ties.h"

#include <algorithm>
#include <catch2/catch.hpp>

namespace staddle {
namespace {

bool smaller(int a, int b) { return a < b; }

using Best = BestOfTies<int, smaller>;

}  // namespace

TEST_CASE("which of a chain of near ties is taken does not depend on the order of the offers") {
  // Neighbours tie; with the highest only the last two do.
  const std::vector<double> chain = {-900.0, -900.0 + 4e-7, -900.0 + 8e-7, -900.0 + 13e-7,
                                     -900.0 + 21e-7};
  std::vector<int> order = {0, 1, 2, 3, 4};
  do {
    Best best;
    for (const int place : order) best.offer(chain[static_cast<std::size_t>(place)], place);
    CAPTURE(order);
    REQUIRE(best.best()->choice == 3);
    REQUIRE(best.highest() == chain.back());
  } while (std::next_permutation(order.begin(), order.end()));
}

TEST_CASE("of equal values the choice that comes first is taken and of others the highest") {
  Best best;
  CHECK_FALSE(best.best());
  best.offer(5.0, 7);
  best.offer(5.0, 3);
  best.offer(5.0, 9);
  CHECK(best.best()->choice == 3);
  best.offer(4.9, 1);
  CHECK(best.best()->choice == 3);
  best.offer(5.1, 12);
  CHECK(best.best()->choice == 12);
  CHECK(best.best()->value == 5.1);
}

}  // namespace staddle
