// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>

#include "staddle/tract/tract_options.h"

namespace staddle::cli {

// A line on standard error that tells how far a tract is solved, round by round, where that
// is a terminal; nothing at all in a pipe or a file. It wipes itself out at the end.
class RoundLine {
 public:
  RoundLine();
  ~RoundLine();
  RoundLine(const RoundLine&) = delete;
  RoundLine& operator=(const RoundLine&) = delete;

  // What the solver is given; empty where nothing is shown. It must not be called once this
  // is gone.
  std::function<void(const TractProgress&)> progress();

 private:
  void draw(const TractProgress& progress);

  bool on_terminal_;
  bool drawn_ = false;
};

}  // namespace staddle::cli
