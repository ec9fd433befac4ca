// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "report/svg_charts.h"
#include "staddle/base/contract.h"

namespace staddle {
namespace {

class BarDrawing {
 public:
  BarDrawing(Canvas& canvas, const BarChart& chart) : canvas_(canvas), chart_(chart) {
    require(!chart.categories.empty() && !chart.series.empty(), "a bar chart needs a bar");
    double low = 0.0, high = 0.0;
    for (const BarSeries& series : chart.series) {
      require(series.values.size() == chart.categories.size(), "a bar for every category");
      for (const auto& value : series.values) {
        low = std::min(low, value.value_or(0.0));
        high = std::max(high, value.value_or(0.0));
      }
    }
    scale_ = round_scale(low, high, 5);
  }

  double draw() {
    const double top = draw_names();
    return chart_.direction == BarChart::Direction::upright ? draw_upright(top) : draw_lying(top);
  }

 private:
  double draw_names() {
    if (chart_.series.size() == 1) return 0.0;
    std::vector<LegendEntry> entries;
    for (std::size_t i = 0; i < chart_.series.size(); ++i) {
      entries.push_back({chart_.series[i].name, LegendEntry::Sample::bar, i});
    }
    return draw_legend(canvas_, 0.0, entries);
  }

  std::string label_of(std::size_t series, std::size_t category) const {
    const std::vector<std::string>& labels = chart_.series[series].labels;
    return category < labels.size() ? labels[category] : "";
  }

  void draw_bar(Canvas::Place corner, double wide, double high, std::size_t series) {
    canvas_.rectangle(corner, wide, high, canvas_.bar_fill(series),
                      {series_colour(series), 1.0, ""});
  }

  double draw_upright(double top) {
    PlotArea plot{room_for_ticks(scale_, false), top + 2.0 * line_height + 12.0,
                  Canvas::width - margin_right, 0.0};
    plot.bottom = plot.top + plot_height;
    scale_.start = plot.bottom;
    scale_.end = plot.top;
    // Labels stand between the title and the highest bar.
    canvas_.text({0.0, top + line_height - 4.0}, Canvas::fitted(chart_.value.title, Canvas::width));
    draw_value_axis(canvas_, plot, scale_, false);
    left_ = plot.left;
    const double step = (plot.right - plot.left) / static_cast<double>(chart_.categories.size());
    for (std::size_t i = 0; i < chart_.categories.size(); ++i) {
      draw_group(i, plot.left + step * static_cast<double>(i), step);
    }
    // The label of a bar that hangs to the bottom needs room of its own.
    if (scale_.low < 0.0) plot.bottom += line_height;
    draw_categories(plot, step);
    canvas_.text({(plot.left + plot.right) / 2, plot.bottom + 2.0 * line_height + 6.0},
                 chart_.category_title, Canvas::Anchor::middle);
    return plot.bottom + 2.0 * line_height + 12.0;
  }

  void draw_group(std::size_t category, double left, double step) {
    const double used = std::min(0.8 * step, 60.0 * static_cast<double>(chart_.series.size()));
    const double wide = used / static_cast<double>(chart_.series.size());
    double x = left + (step - used) / 2;
    for (std::size_t s = 0; s < chart_.series.size(); ++s, x += wide) {
      const auto& value = chart_.series[s].values[category];
      if (!value) continue;
      const double zero = scale_.at(0.0), end = scale_.at(*value);
      draw_bar({x, std::min(zero, end)}, wide, std::fabs(end - zero), s);
      const std::string label = label_of(s, category);
      if (label.empty()) continue;
      label_upright(label, x + wide / 2, end, *value < 0.0);
    }
  }

  // A label that would touch the one before it is left out: the table has its figure.
  void label_upright(const std::string& label, double middle, double end, bool below) {
    const double half = Canvas::width_of(label) / 2;
    const double x = std::clamp(middle, left_ + half, Canvas::width - half);
    double& taken = below ? taken_below_ : taken_above_;
    if (x - half < taken + 4.0) return;
    taken = x + half;
    canvas_.text({x, below ? end + line_height - 3.0 : end - 5.0}, label, Canvas::Anchor::middle);
  }

  // Where names would touch each other only every so manyth is written.
  void draw_categories(const PlotArea& plot, double step) {
    double widest = 0.0;
    for (const std::string& name : chart_.categories) {
      widest = std::max(widest, Canvas::width_of(name));
    }
    const auto every = static_cast<std::size_t>(std::max(1.0, std::ceil((widest + 8.0) / step)));
    for (std::size_t i = 0; i < chart_.categories.size(); i += every) {
      const std::string name = Canvas::fitted(chart_.categories[i], Canvas::width / 2);
      const double half = Canvas::width_of(name) / 2;
      const double x = plot.left + step * (static_cast<double>(i) + 0.5);
      canvas_.text({std::clamp(x, half, Canvas::width - half), plot.bottom + line_height}, name,
                   Canvas::Anchor::middle);
    }
  }

  // Names stand over their bars, in the full width.
  double draw_lying(double top) {
    constexpr double bar = 16.0, over = 21.0, after = 10.0;
    const double room = widest_label() + 8.0;
    const double left = scale_.low < 0.0 ? room : 4.0;
    scale_.start = left;
    scale_.end = Canvas::width - std::max(room, margin_right);
    const double first = top + 4.0;
    const double group = over + bar * static_cast<double>(chart_.series.size()) + after;
    const double bottom = first + group * static_cast<double>(chart_.categories.size());
    for (std::size_t i = 0; i < chart_.categories.size(); ++i) {
      double y = first + group * static_cast<double>(i) + over;
      canvas_.text({0.0, y - 6.0}, Canvas::fitted(chart_.categories[i], Canvas::width));
      draw_lying_ticks(y - 2.0, y + bar * static_cast<double>(chart_.series.size()));
      for (std::size_t s = 0; s < chart_.series.size(); ++s, y += bar) draw_lying_bar(i, s, y, bar);
    }
    draw_lying_axis(bottom);
    return bottom + 2.0 * line_height + 12.0;
  }

  // Beside the bars only, so that no line runs through a name.
  void draw_lying_ticks(double top, double bottom) {
    const double zero = scale_.at(0.0);
    for (const double tick : scale_.ticks()) {
      const double x = scale_.at(tick);
      const bool is_zero = std::fabs(x - zero) < 0.5;
      canvas_.line({x, top}, {x, bottom},
                   {is_zero ? ink::axis : ink::grid, is_zero ? 1.5 : 1.0, ""});
    }
  }

  void draw_lying_bar(std::size_t category, std::size_t series, double y, double high) {
    const auto& value = chart_.series[series].values[category];
    const double zero = scale_.at(0.0), end = scale_.at(value.value_or(0.0));
    const bool left = value && *value < 0.0;
    if (value) draw_bar({std::min(zero, end), y}, std::fabs(end - zero), high - 2.0, series);
    canvas_.text({left ? end - 6.0 : end + 6.0, y + high - 4.0}, label_of(series, category),
                 left ? Canvas::Anchor::end : Canvas::Anchor::start, true);
  }

  void draw_lying_axis(double bottom) {
    double last_end = -Canvas::width;
    for (const double tick : scale_.ticks()) {
      const std::string label = tick_text(tick, scale_.step, false);
      const double half = Canvas::width_of(label) / 2;
      const double x = std::clamp(scale_.at(tick), half, Canvas::width - half);
      if (x - half < last_end + 6.0) continue;
      last_end = x + half;
      canvas_.text({x, bottom + line_height}, label, Canvas::Anchor::middle);
    }
    canvas_.text({(scale_.start + scale_.end) / 2, bottom + 2.0 * line_height + 4.0},
                 chart_.value.title, Canvas::Anchor::middle);
  }

  double widest_label() const {
    double widest = 0.0;
    for (const BarSeries& series : chart_.series) {
      for (const std::string& label : series.labels) {
        widest = std::max(widest, Canvas::width_of(label) * 1.1);  // bold letters are wider
      }
    }
    return widest;
  }

  Canvas& canvas_;
  const BarChart& chart_;
  Scale scale_;
  double left_ = 0.0;  // labels of upright bars begin no further left
  double taken_above_ = -Canvas::width, taken_below_ = -Canvas::width;
};

}  // namespace

double draw(Canvas& canvas, const BarChart& chart) { return BarDrawing(canvas, chart).draw(); }

}  // namespace staddle
