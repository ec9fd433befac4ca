// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cli/command.h"
#include "staddle/base/result.h"
#include "staddle/cruise/plots.h"
#include "staddle/scenario/cruise_question.h"

namespace staddle::cli {

// The words of a cruise command.
struct CruiseOptions {
  std::string plots;
  std::optional<std::string> basal_area_factor, plot_acres, plot_radius_ft;
  std::optional<std::string> model, acres;
  std::vector<std::string> stratum_acres;  // NAME=ACRES
  std::optional<std::string> age_yr, economics, to;
  std::string error = "0.10";
  std::string confidence = "0.90";
  OutputOptions output;
};
void set_up_cruise(CommandLine& line, CruiseOptions& options);

// The same words, understood and found in range; files are not read yet.
struct CruiseRequest {
  PlotDesign design;
  std::vector<StratumAcres> strata;
  CruiseTerms terms;  // economics still absent
};
// Faults: all that is wrong with the words.
Result<CruiseRequest> understand(const CruiseOptions& options);

}  // namespace staddle::cli
