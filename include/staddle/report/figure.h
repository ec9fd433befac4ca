// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "staddle/report/table.h"

// Figures as data, drawn by the SVG writer alone. All numbers are finite.
namespace staddle {

struct Axis {
  std::string title;       // with its unit: "worth, $/acre"
  bool years = false;      // calendar years or ages: whole numbers without separators
  bool from_zero = false;  // the scale includes zero
};

struct FigurePoint {
  double x = 0.0, y = 0.0;
};

// A line through its points in their order; two points at one x draw a drop or a rise.
// A point absent breaks the line.
struct LineSeries {
  std::string name;
  std::vector<std::optional<FigurePoint>> points;
  bool dots = false;  // a mark at every point
};

// A vertical mark across a line chart, named at its head.
struct FigureMark {
  double x = 0.0;
  std::string text;
};

struct LineChart {
  Axis x, y;
  std::vector<LineSeries> series;
  std::vector<FigureMark> marks = {};
  // Where given: the band of y in which all is as good, named in the legend.
  struct Band {
    double low = 0.0, high = 0.0;
    std::string name;
  };
  std::optional<Band> band = std::nullopt;
};

// Bars side by side, one group per category, one bar per series in each group. A value
// absent leaves its place empty. Bars below zero hang from the zero line.
struct BarSeries {
  std::string name;
  std::vector<std::optional<double>> values;  // one per category
  std::vector<std::string> labels = {};       // at the ends of the bars, or none at all
};

struct BarChart {
  enum class Direction {
    upright,  // categories are moments, from left to right
    lying,    // categories are long names, from top to bottom
  };
  Direction direction = Direction::upright;
  std::vector<std::string> categories;
  std::string category_title;
  Axis value;
  std::vector<BarSeries> series;
};

// Values over two choices, rows from the bottom up; a cell absent is not allowed.
struct HeatMap {
  std::string x_title, y_title, value_title;
  std::vector<std::string> columns, rows;
  std::vector<std::vector<std::optional<double>>> values;  // [row][column]
  struct Place {
    std::size_t row = 0, column = 0;
  };
  std::optional<Place> best = std::nullopt;  // marked
  double within = 0.0;  // cells at most so far below the best are marked as as good; 0: none
  std::string within_name = "";  // "within $25 of it"
  double round_to = 1.0;         // ends of the scale are told in steps of so much
};

// A figure with the words that stand for it where it cannot be seen, and its numbers.
struct Figure {
  std::string title;        // a sentence that says what is to be seen
  std::string description;  // for who cannot see it: what is drawn, and its main figures
  std::variant<LineChart, BarChart, HeatMap> drawing;
  Table table;  // shown under it, all that is drawn
};

}  // namespace staddle
