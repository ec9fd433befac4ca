// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <catch2/catch.hpp>
#include <cstdint>
#include <string>

#include "staddle/base/random.h"

namespace staddle::support {

// The seed of one randomised test: made from its tag, hence the same in every run,
// and named by every check that fails while the guard lives. STADDLE_TEST_SEED in
// the environment, a number, shifts all seeds, to look where no run has looked yet.
class TaggedSeed {
 public:
  explicit TaggedSeed(const std::string& tag);

  std::uint64_t value() const { return value_; }
  RandomStream stream(std::uint64_t number = 0) const { return RandomStream(value_, number); }

 private:
  std::uint64_t value_;
  Catch::ScopedMessage message_;
};

}  // namespace staddle::support
