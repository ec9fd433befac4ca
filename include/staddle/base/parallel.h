// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <functional>
#include <stop_token>

namespace staddle {

// Told of progress between 0 and 1, from the thread that called the solver.
using Progress = std::function<void(double fraction_done)>;

// Calls work(chunk) for chunk = 0 .. chunks-1 on at most `threads` threads (0: all
// cores). Which thread takes which chunk is not fixed, so each chunk must write
// only to places of its own: then the result cannot depend on the thread count.
// After a stop request no further chunk is begun; returns whether all were done.
// An exception of a chunk is rethrown here, that of the lowest chunk first.
bool for_each_chunk(std::size_t chunks, unsigned threads,
                    const std::function<void(std::size_t)>& work, std::stop_token stop = {});

}  // namespace staddle
