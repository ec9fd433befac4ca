// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <stop_token>

#include "staddle/base/parallel.h"
#include "staddle/units/age.h"

namespace staddle {

struct StandOptions {
  enum class Method {
    automatic,   // pruned search, proved by upper bounds
    exhaustive,  // every regime is valued by the plain evaluator: the baseline
  };
  Method method = Method::automatic;
  // Also find how far the first thinning and the final harvest may move while the
  // rest is re-optimised and the value stays within the tolerance of near_best.
  bool windows = false;
  // Also find the best regime with exactly 0, 1, ... thinnings.
  bool by_count = false;
  // Only regimes whose first thinning is at this age: what acting then would be worth.
  std::optional<Age> first_thinning_at;
  // Only with first_thinning_at: regimes whose first thinning takes this share, one of the
  // lattice's removal fractions. Later thinnings are free.
  std::optional<double> first_removal_fraction;
  std::stop_token stop;
  Progress progress;  // may be empty
};

}  // namespace staddle
