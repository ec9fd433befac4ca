// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "io/stands_csv.h"
#include "staddle/io/scenario_reader.h"

namespace staddle {

// The stands of a tract, which stand in its tree or in a table beside it. Rows of a table
// are put into the tree as if they stood there; what is then wrong with them is reported
// at their line and column.
class TractStands {
 public:
  // Reports stands that are missing or given twice, and a table that cannot be read.
  TractStands(json::Node& tree, const FileLoader& load, FaultList& faults);

  std::size_t size() const;
  const json::Node& entry(std::size_t i) const;

  // A fault of the tree, at its pointer.
  void report(int order, const Fault& fault);
  // A fault at a pointer of an entry.
  void report_in(std::size_t i, int order, Fault fault);
  // Hands over what was reported of the table.
  void finish();

 private:
  void read_table(const json::Node& name, const FileLoader& load);

  json::Node& tree_;
  FaultList& faults_;
  std::string table_;  // its file
  FaultList of_table_;
  int order_of_table_ = 0;
  std::optional<StandColumns> columns_;  // absent: the stands stand in the tree
  std::vector<int> lines_;
};

}  // namespace staddle
