// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/base/parallel.h"

#include <algorithm>
#include <atomic>
#include <exception>
#include <system_error>
#include <thread>
#include <vector>

namespace staddle {

bool for_each_chunk(std::size_t chunks, unsigned threads,
                    const std::function<void(std::size_t)>& work, std::stop_token stop) {
  std::atomic<std::size_t> next{0};
  std::atomic<std::size_t> done{0};
  std::vector<std::exception_ptr> failures(chunks);
  const auto take_chunks = [&] {
    for (std::size_t chunk = next++; chunk < chunks; chunk = next++) {
      if (stop.stop_requested()) return;
      try {
        work(chunk);
      } catch (...) {
        failures[chunk] = std::current_exception();
      }
      ++done;
    }
  };
  if (threads == 0) threads = std::max(1u, std::thread::hardware_concurrency());
  const std::size_t helpers = std::min<std::size_t>(threads, chunks);
  {
    std::vector<std::jthread> pool;
    try {
      for (std::size_t i = 1; i < helpers; ++i) pool.emplace_back(take_chunks);
    } catch (const std::system_error&) {
      // The system grants no further thread: those at hand do all chunks.
    }
    take_chunks();
  }
  for (const std::exception_ptr& failure : failures) {
    if (failure) std::rethrow_exception(failure);
  }
  return done == chunks;
}

}  // namespace staddle
