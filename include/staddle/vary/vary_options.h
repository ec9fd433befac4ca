// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/base/parallel.h"

namespace staddle {

struct VaryOptions {
  enum class Method {
    automatic,  // one pool of regimes for all that share growth, where that is less work
    separate,   // every cell is searched on its own: the twin, slower
  };
  Method method = Method::automatic;
  unsigned threads = 0;  // 0: all cores; changes no figure
  Progress progress;     // may be empty
};

}  // namespace staddle
