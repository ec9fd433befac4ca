// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace staddle {

// A straight scale from numbers to places on paper, its ends on round ticks.
struct Scale {
  double low = 0.0, high = 1.0;   // low < high
  double step = 1.0;              // between ticks
  double start = 0.0, end = 1.0;  // places of low and high

  double at(double value) const { return start + (value - low) / (high - low) * (end - start); }
  std::vector<double> ticks() const;
};

// Ticks 1, 2 or 5 times a power of ten apart, at most `most` spaces; the ends widened to the
// next tick. Equal ends are moved apart. REQUIRES: finite, low <= high, most > 0.
Scale round_scale(double low, double high, int most);
// Whole ages or years: the ends stay where they are, ticks 1, 2, 5 or 10 apart lie inside.
Scale year_scale(double low, double high, int most);

// How a tick is written: "1,200", "-40", "0.05"; a year "2029".
std::string tick_text(double value, double step, bool years);

}  // namespace staddle
