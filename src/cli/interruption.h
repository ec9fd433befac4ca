// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <signal.h>

#include <stop_token>
#include <thread>

namespace staddle::cli {

// While it lives, Ctrl-C and requests to end the program ask long work to stop, so that
// what was found out so far can be told and no temporary file stays behind. Asked a second
// time, the program ends at once. Threads begun meanwhile leave the signals to it.
class Interruption {
 public:
  Interruption();
  ~Interruption();
  Interruption(const Interruption&) = delete;
  Interruption& operator=(const Interruption&) = delete;

  std::stop_token token() const { return stop_.get_token(); }
  bool requested() const { return stop_.stop_requested(); }

 private:
  void watch(const std::stop_token& over);

  sigset_t signals_{};
  sigset_t before_{};
  std::stop_source stop_;
  std::jthread watcher_;
};

}  // namespace staddle::cli
