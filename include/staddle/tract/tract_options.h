// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <functional>
#include <stop_token>

namespace staddle {

struct TractProgress {
  enum class Stage {
    stands,       // every stand is solved on its own
    schedule,     // rounds of column generation
    relaxation,   // limits cannot be met: what is the least that they must give way
    whole_stands  // one regime for each stand
  };
  Stage stage = Stage::stands;
  int round = 0;
  std::size_t columns = 0;
  // Of the tract, dollars of present value. Before a plan keeps all limits, value is
  // -infinity; before a bound is known, bound is infinity.
  double value = 0.0;
  double bound = 0.0;
};

struct TractOptions {
  enum class Method {
    column_generation,  // regimes are found as they are needed, and proved to suffice
    enumerate,          // every regime of every lattice is a column: the slow twin
  };
  Method method = Method::column_generation;
  // Good enough when bound - value <= max_gap x max(1, |value|); >= 0.
  // 0: solved to tolerance::tract_proof (without whole_stands).
  double max_gap = 0.0;
  // How many seconds are left, asked between rounds; empty: as many as it takes. The
  // library reads no clock for this. A search for whole stands that nothing limits goes
  // on for whole_stands_seconds.
  std::function<double()> seconds_left = {};
  static constexpr double whole_stands_seconds = 60.0;
  unsigned threads = 0;  // 0: all cores; changes no figure
  std::stop_token stop = {};
  // Told from the thread that called solve(); may be empty.
  std::function<void(const TractProgress&)> progress = {};
};

}  // namespace staddle
