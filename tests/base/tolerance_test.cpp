// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/base/tolerance.h"

#include <catch2/catch.hpp>

namespace staddle {
namespace {

TEST_CASE("small values tie within an absolute tolerance") {
  CHECK(tolerance::values_tie(0.0, 0.99e-9));
  CHECK_FALSE(tolerance::values_tie(0.0, 1.01e-9));
  CHECK(tolerance::values_tie(-0.5, -0.5 + 0.99e-9));
  CHECK_FALSE(tolerance::values_tie(-0.5, -0.5 - 1.01e-9));
}

TEST_CASE("large values tie within a relative tolerance") {
  CHECK(tolerance::values_tie(2000.0, 2000.0 + 1.99e-6));
  CHECK_FALSE(tolerance::values_tie(2000.0, 2000.0 + 2.01e-6));
  CHECK(tolerance::values_tie(-2000.0, -2000.0 - 1.99e-6));
  CHECK_FALSE(tolerance::values_tie(2000.0, -2000.0));
}

TEST_CASE("the slack of pruning is wider than a tie at every size of value") {
  for (const double value : {0.0, 1e-6, 1.0, -1.0, 350.0, -2e3, 1e6, 1e12, -1e15}) {
    CAPTURE(value);
    CHECK(tolerance::prune_slack(value) > tolerance::tie * std::fmax(1.0, std::fabs(value)));
    CHECK_FALSE(tolerance::values_tie(value, value + 1.1 * tolerance::prune_slack(value)));
  }
}

}  // namespace
}  // namespace staddle
