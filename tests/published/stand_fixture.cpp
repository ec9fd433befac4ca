// SPDX-License-Identifier: GPL-3.0-or-later
#include "published/stand_fixture.h"

#include <sstream>
#include <utility>

#include "support/files.h"

namespace staddle::published {

std::vector<std::vector<std::string>> rows_of(const std::string& data_file) {
  std::istringstream lines(
      support::read_file(support::in_source_tree("tests/published/data/" + data_file)));
  std::vector<std::vector<std::string>> rows;
  bool header = true;
  for (std::string line; std::getline(lines, line);) {
    if (line.empty() || line.front() == '#') continue;
    if (std::exchange(header, false)) continue;
    std::vector<std::string> cells;
    std::istringstream row(line);
    for (std::string cell; std::getline(row, cell, ',');) cells.push_back(cell);
    rows.push_back(cells);
  }
  return rows;
}

}  // namespace staddle::published
