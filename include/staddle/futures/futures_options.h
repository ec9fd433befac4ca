// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <stop_token>

#include "staddle/base/parallel.h"

namespace staddle {

struct FuturesOptions {
  static constexpr std::uint64_t least_futures = 2;  // a standard error needs two
  static constexpr std::uint64_t most_futures = 10'000'000;

  std::uint64_t futures = 10'000;
  // Future i of every regime meets the storms of random stream i of this seed, one draw
  // a year: the same storms in the same calendar years whatever the regime.
  std::uint64_t seed = 1;
  // Also keep or clear after every storm that destroys something (FuturesSolution).
  bool choices = false;
  unsigned threads = 0;  // 0: all cores; changes nothing but the time taken
  std::stop_token stop;
  Progress progress;  // may be empty
};

}  // namespace staddle
