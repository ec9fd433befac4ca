// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/canvas.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "report/escape.h"
#include "report/wrap.h"
#include "staddle/base/contract.h"

namespace staddle {
namespace {

std::string number(double value) {
  require(std::isfinite(value), "a drawing needs finite numbers");
  std::array<char, 64> digits{};
  // What rounds to zero has no sign.
  const double shown = std::fabs(value) < 0.05 ? 0.0 : value;
  const auto [end, error] = std::to_chars(digits.data(), digits.data() + digits.size(), shown,
                                          std::chars_format::fixed, 1);
  require(error == std::errc(), "a drawing holds no such large numbers");
  return {digits.data(), end};
}

std::string stroke(const Canvas::Pen& pen) {
  if (pen.colour == "none") return " stroke=\"none\"";
  std::string text =
      fmt::format(" stroke=\"{}\" stroke-width=\"{}\"", pen.colour, number(pen.width));
  if (!pen.dash.empty()) text += fmt::format(" stroke-dasharray=\"{}\"", pen.dash);
  return text;
}

const char* anchor_name(Canvas::Anchor anchor) {
  switch (anchor) {
    case Canvas::Anchor::middle:
      return "middle";
    case Canvas::Anchor::end:
      return "end";
    case Canvas::Anchor::start:
      break;
  }
  return "start";
}

}  // namespace

void Canvas::line(Place from, Place to, const Pen& pen) {
  elements_ += fmt::format("<line x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"{}/>\n", number(from.x),
                           number(from.y), number(to.x), number(to.y), stroke(pen));
}

void Canvas::path(const std::vector<Place>& points, const Pen& pen) {
  std::string places;
  for (const Place& point : points) {
    places += fmt::format("{}{},{}", places.empty() ? "" : " ", number(point.x), number(point.y));
  }
  elements_ += fmt::format("<polyline points=\"{}\" fill=\"none\"{} stroke-linejoin=\"round\"/>\n",
                           places, stroke(pen));
}

void Canvas::rectangle(Place corner, double wide, double high, const std::string& fill,
                       const Pen& pen) {
  elements_ += fmt::format(
      "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" fill=\"{}\"{} "
      "shape-rendering=\"crispEdges\"/>\n",
      number(corner.x), number(corner.y), number(wide), number(high), fill, stroke(pen));
}

void Canvas::dot(Place centre, double radius, const std::string& fill, const Pen& pen) {
  elements_ += fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"{}\" fill=\"{}\"{}/>\n",
                           number(centre.x), number(centre.y), number(radius), fill, stroke(pen));
}

void Canvas::text(Place at, const std::string& words, Anchor anchor, bool bold) {
  elements_ += fmt::format(
      "<text x=\"{}\" y=\"{}\" font-size=\"{}\" font-family=\"Helvetica, Arial, Liberation Sans, "
      "sans-serif\"{} "
      "fill=\"{}\" text-anchor=\"{}\">{}</text>\n",
      number(at.x), number(at.y), number(text_size), bold ? " font-weight=\"bold\"" : "", ink::text,
      anchor_name(anchor), escape::markup(words));
}

double Canvas::width_of(const std::string& words) {
  return beside_letters + letter * static_cast<double>(staddle::width_of(words));
}

std::string Canvas::fitted(const std::string& words, double space) {
  if (width_of(words) <= space) return words;
  std::string shorter = words;
  while (!shorter.empty() && width_of(shorter + "...") > space) {
    // A letter of several bytes goes as a whole.
    while (shorter.size() > 1 && (static_cast<unsigned char>(shorter.back()) & 0xC0) == 0x80) {
      shorter.pop_back();
    }
    shorter.pop_back();
  }
  return shorter + "...";
}

void Canvas::define(const std::string& name, const std::string& pattern) {
  if (std::ranges::find(defined_, name) != defined_.end()) return;
  defined_.push_back(name);
  definitions_ += pattern;
}

std::string Canvas::bar_fill(std::size_t series) {
  if (series == 0) return series_colour(0);
  const std::string name = fmt::format("{}-s{}", id_, series);
  const int turn = series % 2 == 1 ? 45 : 135;
  define(name,
         fmt::format("<pattern id=\"{}\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\" "
                     "patternTransform=\"rotate({})\"><rect width=\"6\" height=\"6\" "
                     "fill=\"{}\"/><rect width=\"3\" height=\"6\" fill=\"{}\"/></pattern>\n",
                     name, turn, ink::paper, series_colour(series)));
  return fmt::format("url(#{})", name);
}

std::string Canvas::blank_fill() {
  const std::string name = id_ + "-blank";
  define(name,
         fmt::format("<pattern id=\"{}\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\" "
                     "patternTransform=\"rotate(45)\"><rect width=\"6\" height=\"6\" "
                     "fill=\"#f4f4f4\"/><rect width=\"1\" height=\"6\" "
                     "fill=\"#bbbbbb\"/></pattern>\n",
                     name));
  return fmt::format("url(#{})", name);
}

std::string Canvas::finish(double high, const std::string& title,
                           const std::string& description) const {
  std::string svg = fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {} {}\" width=\"100%\" "
      "role=\"img\" aria-labelledby=\"{}-title {}-desc\">\n<title id=\"{}-title\">{}</title>\n"
      "<desc id=\"{}-desc\">{}</desc>\n",
      number(width), number(high), id_, id_, id_, escape::markup(title), id_,
      escape::markup(description));
  if (!definitions_.empty()) svg += "<defs>\n" + definitions_ + "</defs>\n";
  return svg + elements_ + "</svg>\n";
}

const std::string& series_colour(std::size_t series) {
  static const std::array<std::string, 6> colours{"#0b5c8a", "#b5460f", "#1d7044",
                                                  "#6b3b8f", "#7a5c00", "#3d3d3d"};
  return colours[series % colours.size()];
}

const std::string& series_dash(std::size_t series) {
  static const std::array<std::string, 6> dashes{"", "8 4", "2 3", "10 3 2 3", "4 2", "14 4"};
  return dashes[series % dashes.size()];
}

double draw_legend(Canvas& canvas, double top, const std::vector<LegendEntry>& entries) {
  constexpr double row = 20.0, sample = 26.0, gap = 18.0;
  double x = 4.0, y = top + row / 2;
  for (const LegendEntry& entry : entries) {
    const std::string name = Canvas::fitted(entry.name, Canvas::width - sample - 16.0);
    const double wide = sample + 6.0 + Canvas::width_of(name);
    if (x > 4.0 && x + wide > Canvas::width) {
      x = 4.0;
      y += row;
    }
    if (entry.sample == LegendEntry::Sample::line) {
      canvas.line({x, y}, {x + sample, y},
                  {series_colour(entry.series), 2.5, series_dash(entry.series)});
    } else {
      const bool bar = entry.sample == LegendEntry::Sample::bar;
      canvas.rectangle({x, y - 6.0}, sample, 12.0, bar ? canvas.bar_fill(entry.series) : ink::band,
                       {bar ? series_colour(entry.series) : ink::axis, 1.0, ""});
    }
    canvas.text({x + sample + 6.0, y + 5.0}, name);
    x += wide + gap;
  }
  return y + row / 2 + 4.0;
}

}  // namespace staddle
