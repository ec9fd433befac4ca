// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

// An answer ready to be read: plain data, made once, printed by every writer alike, so
// that text, page and spreadsheet cannot disagree. All numbers in it are rounded words
// already; a cell keeps the unrounded number beside them.
namespace staddle {

struct Cell {
  std::string text;
  std::optional<double> value = std::nullopt;  // in the unit of its column
};

// A column of a table: its heading in full words, and the unit beneath it.
struct Column {
  std::string heading;
  std::string unit = "";
  bool words = false;  // words stand to the left and may be wrapped; numbers to the right
};

struct Table {
  std::string title;
  std::vector<Column> columns;
  std::vector<std::vector<Cell>> rows;  // one cell per column
};

// Everything that belongs under one heading, shown in this order.
struct Section {
  std::string title;
  std::vector<std::string> paragraphs;
  std::vector<Table> tables;
  std::vector<std::string> items;  // a list, one sentence or more each
};

// One of the lines with which an answer opens.
struct Line {
  int topic = 0;     // its number among the twelve; a topic may be left out, none moved
  std::string text;  // to be read aloud
};

struct Report {
  std::string title;
  std::vector<std::string> head;  // owner, maker, purpose
  std::vector<Line> lines;
  std::vector<Section> sections;
  std::string foot;               // the proof, and what it does not prove
};

}  // namespace staddle
