// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "staddle/scenario/scenario.h"
#include "staddle/tract/tract_problem.h"

// A tract file as a value: read, checked, every default filled in and noted.
namespace staddle {

// One stand with all that is shared and what it says instead: a scenario of its own, whose
// title is its name.
struct TractFileStand {
  std::string group;  // of adjacent stands; empty: none
  Scenario scenario;  // its assumptions and questions stand in the tract's
};

struct TractFile {
  std::string file;  // as the user named it, for messages
  std::string title, purpose, owner, prepared_by;
  std::optional<CalendarYear> present_year;
  std::vector<TractFileStand> stands;
  TractPlan plan;
  std::vector<Assumption> assumed;
  std::vector<std::string> questions;  // values that are allowed and seldom meant
};

// The problem of a tract, its stands in the order of the file.
// REQUIRES: a tract that the reader accepted.
TractProblem make_tract_problem(const TractFile& tract);

}  // namespace staddle
