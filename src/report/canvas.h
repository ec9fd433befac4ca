// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace staddle {

// The elements of one drawing, written one after the other. Every element carries its own
// attributes, so that a program that reads no style sheet draws the same. Numbers with one
// decimal, so that the same drawing gives the same bytes.
class Canvas {
 public:
  struct Place {
    double x = 0.0, y = 0.0;
  };
  enum class Anchor { start, middle, end };
  struct Pen {
    std::string colour = "#333333";
    double width = 1.0;
    std::string dash = "";  // "8 4"; empty: solid
  };

  static constexpr double width = 480.0;
  static constexpr double text_size = 14.0;
  // A letter is taken to be this wide on average, and a text so much wider than its letters:
  // enough for the wide faces that stand in where the one asked for is not there.
  static constexpr double letter = 0.59 * text_size;
  static constexpr double beside_letters = 4.0;

  explicit Canvas(std::string id) : id_(std::move(id)) {}

  void line(Place from, Place to, const Pen& pen);
  void path(const std::vector<Place>& points, const Pen& pen);
  void rectangle(Place corner, double wide, double high, const std::string& fill,
                 const Pen& pen = {"none", 0.0, ""});
  void dot(Place centre, double radius, const std::string& fill, const Pen& pen);
  void text(Place at, const std::string& words, Anchor anchor = Anchor::start, bool bold = false);

  // How wide these words may become; UTF-8.
  static double width_of(const std::string& words);
  // The words, or as many letters of them as fit and "...".
  static std::string fitted(const std::string& words, double space);

  // The fill of the nth series: plain, then hatched this way and that, so that bars differ
  // in grey too. Fills are defined once, when first asked for.
  std::string bar_fill(std::size_t series);
  // A light hatch for what is not allowed.
  std::string blank_fill();

  // The whole element, titled; `high` is its height.
  std::string finish(double high, const std::string& title, const std::string& description) const;

 private:
  void define(const std::string& name, const std::string& pattern);

  std::string id_;
  std::string definitions_;
  std::vector<std::string> defined_;
  std::string elements_;
};

// Colours of the series: dark enough beside white, told apart by the colour-blind.
const std::string& series_colour(std::size_t series);
// Dashes of the series; the first is solid.
const std::string& series_dash(std::size_t series);

namespace ink {
inline constexpr const char* text = "#1a1a1a";
inline constexpr const char* axis = "#555555";
inline constexpr const char* grid = "#dddddd";
inline constexpr const char* paper = "#ffffff";
inline constexpr const char* band = "#e3eedd";
}  // namespace ink

// A name beside a sample of what it names.
struct LegendEntry {
  std::string name;
  enum class Sample { line, bar, band } sample = Sample::line;
  std::size_t series = 0;
};
// The entries in rows that fit the width, from `top` down; returns where they end.
double draw_legend(Canvas& canvas, double top, const std::vector<LegendEntry>& entries);

}  // namespace staddle
