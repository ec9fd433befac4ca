// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <stop_token>
#include <string>

#include "staddle/base/parallel.h"
#include "staddle/io/stands_reader.h"

namespace staddle {

// Part `number` of `of` parts: rows of a table cut into runs of nearly the same length, so
// that the answers of all parts, put together in order, are those of the whole.
struct StandsPart {
  std::size_t number = 1;
  std::size_t of = 1;
};

struct StandsOptions {
  StandsPart part;
  unsigned threads = 0;     // 0: all cores; changes no byte
  bool exhaustive = false;  // every solve values every regime
  std::stop_token stop;
  Progress progress;
};

struct StandsTally {
  std::size_t answered = 0;
  std::size_t faulty = 0;
  bool complete = false;  // false: stopped, or the sink took no more
};

// Answers one row after the other and hands every answer to `sink`, in the order of the
// table: a line of JSON, staddle-advice/1 with name and line of the row, or {name, line,
// errors} where there is no answer. Holds a few dozen answers at a time, however long the
// table is. The sink is called from the calling thread; false ends the work.
StandsTally answer_stands(StandsReader reader, const StandsOptions& options,
                          const std::function<bool(const std::string& line)>& sink);

}  // namespace staddle
