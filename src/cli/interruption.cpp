// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/interruption.h"

#include <unistd.h>

#include <ctime>

namespace staddle::cli {

Interruption::Interruption() {
  sigemptyset(&signals_);
  for (const int signal : {SIGINT, SIGTERM, SIGHUP}) {
    // Whoever began the program may want it to outlive a signal, as nohup does.
    struct sigaction action {};
    const bool ignored = ::sigaction(signal, nullptr, &action) == 0 && action.sa_handler == SIG_IGN;
    if (!ignored) sigaddset(&signals_, signal);
  }
  pthread_sigmask(SIG_BLOCK, &signals_, &before_);
  watcher_ = std::jthread([this](const std::stop_token& over) { watch(over); });
}

Interruption::~Interruption() {
  watcher_.request_stop();
  watcher_.join();
  pthread_sigmask(SIG_SETMASK, &before_, nullptr);
}

void Interruption::watch(const std::stop_token& over) {
  constexpr timespec moment{0, 20'000'000};  // how long the end of the work may have to wait
  while (!over.stop_requested()) {
    const int signal = sigtimedwait(&signals_, nullptr, &moment);
    if (signal < 0) continue;
    constexpr int ended_by_signal = 128;
    if (!stop_.request_stop()) ::_exit(ended_by_signal + signal);
  }
}

}  // namespace staddle::cli
