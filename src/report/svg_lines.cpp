// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <limits>

#include "report/svg_charts.h"
#include "staddle/base/contract.h"

namespace staddle {
namespace {

struct Span {
  double low = std::numeric_limits<double>::infinity();
  double high = -std::numeric_limits<double>::infinity();
  void take(double value) {
    low = std::min(low, value);
    high = std::max(high, value);
  }
};

class LineDrawing {
 public:
  LineDrawing(Canvas& canvas, const LineChart& chart) : canvas_(canvas), chart_(chart) {}

  double draw() {
    set_scales();
    const double title = draw_names() + line_height;
    canvas_.text({0.0, title - 4.0}, Canvas::fitted(chart_.y.title, Canvas::width));
    plot_.top = place_marks(title) + 12.0;
    plot_.bottom = plot_.top + plot_height;
    y_.start = plot_.bottom;
    y_.end = plot_.top;
    draw_band();
    draw_value_axis(canvas_, plot_, y_, chart_.y.years);
    draw_time_axis();
    draw_marks();
    for (std::size_t i = 0; i < chart_.series.size(); ++i) draw_series(i);
    return plot_.bottom + 2.0 * line_height + 12.0;
  }

 private:
  void set_scales() {
    Span x, y;
    for (const LineSeries& series : chart_.series) {
      for (const auto& point : series.points) {
        if (!point) continue;
        x.take(point->x);
        y.take(point->y);
      }
    }
    require(x.low <= x.high, "a line chart needs a point");
    for (const FigureMark& mark : chart_.marks) x.take(mark.x);
    if (chart_.band) {
      y.take(chart_.band->low);
      y.take(chart_.band->high);
    }
    if (chart_.y.from_zero) y.take(0.0);
    y_ = round_scale(y.low, y.high, 6);
    x_ = chart_.x.years ? year_scale(x.low, x.high, 8) : round_scale(x.low, x.high, 8);
    plot_.left = room_for_ticks(y_, chart_.y.years);
    plot_.right = Canvas::width - margin_right;
    x_.start = plot_.left;
    x_.end = plot_.right;
  }

  double draw_names() {
    std::vector<LegendEntry> entries;
    for (std::size_t i = 0; i < chart_.series.size(); ++i) {
      entries.push_back({chart_.series[i].name, LegendEntry::Sample::line, i});
    }
    if (chart_.band) entries.push_back({chart_.band->name, LegendEntry::Sample::band, 0});
    return draw_legend(canvas_, 0.0, entries);
  }

  // Names of marks that would touch each other go into rows of their own.
  double place_marks(double top) {
    std::vector<double> ends;  // of the last name in each row
    for (const FigureMark& mark : chart_.marks) {
      const double half = Canvas::width_of(mark.text) / 2;
      const double centre = std::clamp(x_.at(mark.x), half, Canvas::width - half);
      std::size_t row = 0;
      while (row < ends.size() && ends[row] + 6.0 > centre - half) ++row;
      if (row == ends.size()) ends.push_back(0.0);
      ends[row] = centre + half;
      names_.push_back({centre, top + line_height * static_cast<double>(row + 1)});
    }
    return top + line_height * static_cast<double>(ends.size());
  }

  void draw_band() {
    if (!chart_.band) return;
    const double high = y_.at(chart_.band->high), low = y_.at(chart_.band->low);
    canvas_.rectangle({plot_.left, high}, plot_.right - plot_.left, low - high, ink::band);
  }

  void draw_time_axis() {
    canvas_.line({plot_.left, plot_.bottom}, {plot_.right, plot_.bottom}, {ink::axis, 1.5, ""});
    for (const double tick : x_.ticks()) {
      const double x = x_.at(tick);
      canvas_.line({x, plot_.bottom}, {x, plot_.bottom + 5.0}, {ink::axis, 1.5, ""});
      const std::string label = tick_text(tick, x_.step, chart_.x.years);
      const double half = Canvas::width_of(label) / 2;
      canvas_.text({std::min(x, Canvas::width - half), plot_.bottom + line_height + 2.0}, label,
                   Canvas::Anchor::middle);
    }
    canvas_.text({(plot_.left + plot_.right) / 2, plot_.bottom + 2.0 * line_height + 6.0},
                 chart_.x.title, Canvas::Anchor::middle);
  }

  void draw_marks() {
    for (std::size_t i = 0; i < chart_.marks.size(); ++i) {
      const double x = x_.at(chart_.marks[i].x);
      canvas_.line({x, names_[i].y + 4.0}, {x, plot_.bottom}, {ink::axis, 1.0, "3 3"});
      canvas_.text({names_[i].x, names_[i].y}, chart_.marks[i].text, Canvas::Anchor::middle);
    }
  }

  void draw_series(std::size_t index) {
    const LineSeries& series = chart_.series[index];
    const std::string& colour = series_colour(index);
    std::vector<Canvas::Place> stretch;
    const auto flush = [&] {
      if (stretch.size() > 1) canvas_.path(stretch, {colour, 2.5, series_dash(index)});
      if (stretch.size() == 1 && !series.dots) {
        canvas_.dot(stretch.front(), 3.0, colour, {"none", 0.0, ""});
      }
      stretch.clear();
    };
    for (const auto& point : series.points) {
      if (!point) {
        flush();
        continue;
      }
      stretch.push_back({x_.at(point->x), y_.at(point->y)});
    }
    flush();
    if (!series.dots) return;
    for (const auto& point : series.points) {
      if (!point) continue;
      canvas_.dot({x_.at(point->x), y_.at(point->y)}, 3.0, ink::paper, {colour, 1.8, ""});
    }
  }

  Canvas& canvas_;
  const LineChart& chart_;
  PlotArea plot_;
  Scale x_, y_;
  std::vector<Canvas::Place> names_;
};

}  // namespace

double room_for_ticks(const Scale& scale, bool years) {
  double widest = 0.0;
  for (const double tick : scale.ticks()) {
    widest = std::max(widest, Canvas::width_of(tick_text(tick, scale.step, years)));
  }
  return widest + 12.0;
}

void draw_value_axis(Canvas& canvas, const PlotArea& plot, const Scale& scale, bool years) {
  for (const double tick : scale.ticks()) {
    const double y = scale.at(tick);
    const bool zero = tick > -scale.step / 2 && tick < scale.step / 2;
    canvas.line({plot.left, y}, {plot.right, y},
                {zero ? ink::axis : ink::grid, zero ? 1.5 : 1.0, ""});
    canvas.text({plot.left - 6.0, y + 5.0}, tick_text(tick, scale.step, years),
                Canvas::Anchor::end);
  }
}

double draw(Canvas& canvas, const LineChart& chart) { return LineDrawing(canvas, chart).draw(); }

}  // namespace staddle
