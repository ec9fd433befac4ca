// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/report/figure.h"
#include "staddle/report/table.h"

// An answer ready to be read: plain data, made once, printed by every writer alike, so
// that text, page and spreadsheet cannot disagree. All numbers in it are rounded words
// already; a cell keeps the unrounded number beside them.
namespace staddle {

// Everything that belongs under one heading, shown in this order.
struct Section {
  std::string title;
  std::vector<std::string> paragraphs;
  std::vector<Table> tables;
  std::vector<std::string> items;  // a list, one sentence or more each
  // Before the tables; writers without drawings show the table of each instead.
  std::vector<Figure> figures = {};
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
