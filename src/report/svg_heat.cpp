// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "report/svg_charts.h"
#include "signs/plain_words.h"
#include "staddle/base/contract.h"

namespace staddle {
namespace {

// From pale to dark: the order survives in grey, and for the colour-blind.
std::string shade(double share) {
  struct Rgb {
    double red, green, blue;
  };
  static constexpr std::array<Rgb, 5> stops{
      {{250, 246, 214}, {202, 224, 166}, {120, 183, 140}, {46, 125, 134}, {27, 58, 107}}};
  const double place = std::clamp(share, 0.0, 1.0) * (stops.size() - 1);
  const auto from = std::min(static_cast<std::size_t>(place), stops.size() - 2);
  const double way = place - static_cast<double>(from);
  const auto mix = [&](double a, double b) {
    return static_cast<int>(std::lround(a + (b - a) * way));
  };
  const Rgb &a = stops[from], &b = stops[from + 1];
  return fmt::format("#{:02x}{:02x}{:02x}", mix(a.red, b.red), mix(a.green, b.green),
                     mix(a.blue, b.blue));
}

class HeatDrawing {
 public:
  HeatDrawing(Canvas& canvas, const HeatMap& map) : canvas_(canvas), map_(map) {
    require(!map.rows.empty() && !map.columns.empty() && map.values.size() == map.rows.size(),
            "a map needs cells");
    for (const auto& row : map.values) {
      require(row.size() == map.columns.size(), "a map needs a cell for every place");
      for (const auto& value : row) {
        if (!value) continue;
        low_ = std::min(low_, *value);
        high_ = std::max(high_, *value);
      }
    }
    require(low_ <= high_, "a map needs a value");
  }

  double draw() {
    double widest = 0.0;
    for (const std::string& name : map_.rows) widest = std::max(widest, Canvas::width_of(name));
    const double top = draw_scale() + line_height + 4.0;
    plot_ = {widest + 12.0, top, Canvas::width - 4.0, 0.0};
    wide_ = std::min((plot_.right - plot_.left) / static_cast<double>(map_.columns.size()), 60.0);
    plot_.right = plot_.left + wide_ * static_cast<double>(map_.columns.size());
    plot_.bottom = plot_.top + high_of_row * static_cast<double>(map_.rows.size());
    canvas_.text({0.0, plot_.top - 8.0}, map_.y_title);
    for (std::size_t row = 0; row < map_.rows.size(); ++row) draw_row(row);
    draw_best();
    draw_columns();
    return plot_.bottom + 2.0 * line_height + 12.0;
  }

 private:
  static constexpr double high_of_row = 34.0;

  double share(double value) const { return high_ > low_ ? (value - low_) / (high_ - low_) : 1.0; }

  // What the shades and the marks mean.
  double draw_scale() {
    constexpr double wide = 150.0, high = 14.0;
    constexpr int pieces = 30;
    canvas_.text({0.0, 14.0}, map_.value_title);
    const std::string least = rounded(low_), most = rounded(high_);
    const double left = Canvas::width_of(least) + 8.0;
    canvas_.text({0.0, 36.0}, least);
    for (int i = 0; i < pieces; ++i) {
      canvas_.rectangle({left + wide / pieces * i, 25.0}, wide / pieces + 0.5, high,
                        shade((i + 0.5) / pieces));
    }
    canvas_.text({left + wide + 8.0, 36.0}, most);
    double x = left + wide + 8.0 + Canvas::width_of(most) + 20.0;
    if (any_blank()) {
      canvas_.rectangle({x, 25.0}, 26.0, high, canvas_.blank_fill(), {ink::axis, 1.0, ""});
      canvas_.text({x + 32.0, 36.0}, "not allowed");
    }
    x = 6.0;
    if (map_.best) {
      mark_best({x, 51.0});
      canvas_.text({x + 14.0, 56.0}, "the best");
      x += 14.0 + Canvas::width_of("the best") + 20.0;
    }
    if (map_.within > 0.0) {
      mark_as_good({x, 51.0}, true);
      canvas_.text({x + 12.0, 56.0}, map_.within_name);
    }
    return map_.best || map_.within > 0.0 ? 64.0 : 44.0;
  }

  std::string rounded(double value) const {
    return words::number(map_.round_to * std::round(value / map_.round_to));
  }

  bool any_blank() const {
    return std::ranges::any_of(map_.values, [](const auto& row) {
      return std::ranges::any_of(row, [](const auto& value) { return !value; });
    });
  }

  void mark_best(Canvas::Place at) {
    canvas_.dot(at, 7.5, ink::paper, {ink::text, 1.5, ""});
    canvas_.dot(at, 3.5, ink::text, {"none", 0.0, ""});
  }
  void mark_as_good(Canvas::Place at, bool on_paper) {
    canvas_.dot(at, 3.5, ink::paper, {on_paper ? ink::text : ink::axis, 1.5, ""});
  }

  Canvas::Place centre(std::size_t row, std::size_t column) const {
    return {plot_.left + wide_ * (static_cast<double>(column) + 0.5),
            plot_.bottom - high_of_row * (static_cast<double>(row) + 0.5)};
  }

  void draw_row(std::size_t row) {
    const double top = plot_.bottom - high_of_row * static_cast<double>(row + 1);
    canvas_.text({plot_.left - 6.0, top + high_of_row / 2 + 5.0}, map_.rows[row],
                 Canvas::Anchor::end);
    const double best = map_.best ? *map_.values[map_.best->row][map_.best->column] : high_;
    for (std::size_t column = 0; column < map_.columns.size(); ++column) {
      const auto& value = map_.values[row][column];
      canvas_.rectangle({plot_.left + wide_ * static_cast<double>(column), top}, wide_, high_of_row,
                        value ? shade(share(*value)) : canvas_.blank_fill(), {ink::paper, 1.0, ""});
      if (value && map_.within > 0.0 && *value >= best - map_.within) {
        mark_as_good(centre(row, column), false);
      }
    }
  }

  void draw_best() {
    if (map_.best) mark_best(centre(map_.best->row, map_.best->column));
  }

  void draw_columns() {
    double widest = 0.0;
    for (const std::string& name : map_.columns) {
      widest = std::max(widest, Canvas::width_of(name));
    }
    const auto every = static_cast<std::size_t>(std::max(1.0, std::ceil((widest + 6.0) / wide_)));
    for (std::size_t i = 0; i < map_.columns.size(); i += every) {
      const double half = Canvas::width_of(map_.columns[i]) / 2;
      canvas_.text(
          {std::clamp(centre(0, i).x, half, Canvas::width - half), plot_.bottom + line_height},
          map_.columns[i], Canvas::Anchor::middle);
    }
    const double half = Canvas::width_of(map_.x_title) / 2;
    canvas_.text(
        {std::max(half, (plot_.left + plot_.right) / 2), plot_.bottom + 2.0 * line_height + 4.0},
        map_.x_title, Canvas::Anchor::middle);
  }

  Canvas& canvas_;
  const HeatMap& map_;
  PlotArea plot_;
  double wide_ = 0.0;
  double low_ = std::numeric_limits<double>::infinity();
  double high_ = -std::numeric_limits<double>::infinity();
};

}  // namespace

double draw(Canvas& canvas, const HeatMap& map) { return HeatDrawing(canvas, map).draw(); }

}  // namespace staddle
