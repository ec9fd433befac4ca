// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/base/parallel.h"

namespace staddle {

struct PlantOptions {
  bool exhaustive = false;  // every solve values every regime: the twin, slower
  bool break_evens = true;  // also find the responses at which the order would turn
  unsigned threads = 0;     // 0: all cores; changes no figure
  Progress progress;        // may be empty
};

}  // namespace staddle
