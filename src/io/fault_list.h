// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "staddle/base/error.h"

namespace staddle {

// Faults as they are found, in whatever order the checks run; given out in the order
// in which they stand in the file.
class FaultList {
 public:
  explicit FaultList(std::string file) : file_(std::move(file)) {}

  // `order`: where in the file, counted in values from its beginning.
  void add(int order, FaultCode code, std::string place, std::string text, std::string hint = "");
  // Faults of another file, named at that place of this one.
  void add_all(int order, const Faults& faults);

  bool empty() const { return placed_.empty(); }
  const std::string& file() const { return file_; }
  Faults in_file_order() const;
  // As they were found, each with its order.
  const std::vector<std::pair<int, Fault>>& placed() const { return placed_; }

 private:
  std::string file_;
  std::vector<std::pair<int, Fault>> placed_;
};

}  // namespace staddle
