// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "staddle/base/result.h"
#include "staddle/scenario/scenario.h"

namespace staddle {

// One row of a table of stands, not yet understood.
struct StandRow {
  int line = 0;  // of the file, from 1
  std::string name;
  std::vector<std::string> cells;
  Faults faults;  // of its quotation marks; the row is then moot
};

struct StandsInput {
  std::string scenario_text, scenario_file;  // a scenario (staddle-scenario/1)
  std::string stands_text, stands_file;      // a table of stands
};

// A table of stands, each of which is to be answered with the products, economics,
// decisions, storms, site and signs of one scenario, whose own stand, acres, stated regimes
// and sweeps are not read. Columns: name, acres, group, model, site_index_ft,
// dominant_height_ft, planted_tpa, age_yr, tpa, basal_area_ft2_ac, live_crown_ratio,
// last_thinning_age_yr, last_thinning_removal_fraction, in any order; name, acres and model
// are required, and a blank cell is an absent key. Holds the text, not its rows, so that a
// table may be long.
class StandsReader {
 public:
  // All faults of the scenario and of the table's header together.
  static Result<StandsReader> open(StandsInput input);

  std::size_t size() const;  // rows of the table
  // The rows one after the other, in the order of the file.
  std::optional<StandRow> next();
  // The scenario of a row; its faults with line and column. Several threads may ask at once.
  Result<Scenario> scenario_of(const StandRow& row) const;

 private:
  struct Content;
  explicit StandsReader(std::shared_ptr<Content> content) : content_(std::move(content)) {}
  std::shared_ptr<Content> content_;
};

}  // namespace staddle
