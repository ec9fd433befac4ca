// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace staddle {

// Rounded words, and the unrounded number beside them.
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

}  // namespace staddle
