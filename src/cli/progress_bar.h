// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "staddle/base/parallel.h"

namespace staddle::cli {

// A bar on standard error while a command works, where that is a terminal; nothing at
// all in a pipe or a file. It wipes itself out at the end.
class ProgressBar {
 public:
  explicit ProgressBar(const std::string& what);
  ~ProgressBar();
  ProgressBar(const ProgressBar&) = delete;
  ProgressBar& operator=(const ProgressBar&) = delete;

  // What a solver is given to tell of its progress; empty where no bar is drawn. It must
  // not be called once this is gone.
  Progress progress();

 private:
  void draw(double fraction_done);

  std::string what_;
  bool on_terminal_;
  int shown_percent_ = -1;
};

}  // namespace staddle::cli
