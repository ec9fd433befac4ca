// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "report/canvas.h"
#include "report/scale.h"
#include "staddle/report/figure.h"

namespace staddle {

// Each draws one kind of figure and returns the height that it takes.
double draw(Canvas& canvas, const LineChart& chart);
double draw(Canvas& canvas, const BarChart& chart);
double draw(Canvas& canvas, const HeatMap& map);

// The rectangle between the axes.
struct PlotArea {
  double left = 0.0, top = 0.0, right = 0.0, bottom = 0.0;
};

inline constexpr double line_height = 18.0;
inline constexpr double margin_right = 14.0;
inline constexpr double plot_height = 230.0;

// Room for the widest of the tick labels, and a little beside them.
double room_for_ticks(const Scale& scale, bool years);
// Level lines at the ticks with their labels to the left.
void draw_value_axis(Canvas& canvas, const PlotArea& plot, const Scale& scale, bool years);

}  // namespace staddle
