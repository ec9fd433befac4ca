// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>

namespace staddle {

// The project's only source of random numbers: counter based, so that draw i of
// stream s is the same whatever the thread that asks for it, and in every library
// (std::*_distribution is free to differ between libraries).
//
// The mixing is the splitmix64 finaliser (Steele, Lea & Flood 2014, "Fast
// splittable pseudorandom number generators", OOPSLA).
class RandomStream {
 public:
  RandomStream(std::uint64_t seed, std::uint64_t stream)
      : state_(mix(seed + golden * (2 * stream + 1))) {}

  std::uint64_t next_bits() {
    state_ += golden;
    return mix(state_);
  }
  // Uniform on [0, 1): the top 53 bits.
  double next_uniform() { return static_cast<double>(next_bits() >> 11) * 0x1.0p-53; }
  // Uniform on {0, ..., count - 1}. REQUIRES: count > 0. The bias of the
  // remainder is below count / 2^64.
  std::uint64_t next_below(std::uint64_t count) { return next_bits() % count; }

 private:
  static constexpr std::uint64_t golden = 0x9E3779B97F4A7C15ULL;
  static std::uint64_t mix(std::uint64_t z) {
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31);
  }
  std::uint64_t state_;
};

}  // namespace staddle
