// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/tract/tract_options.h"
#include "staddle/tract/tract_solution.h"
#include "tract/limits.h"
#include "tract/stand_model.h"
#include "tract/tract_column.h"

namespace staddle {

// Some acres of a stand under a regime.
struct Share {
  Regime regime;
  double acres = 0.0;
};

// How the linear programs of a tract ended; what the answer is told from.
struct Schedule {
  TractSolution::Status status = TractSolution::Status::limit_reached;
  std::string message;
  bool keeps_limits = false;
  double present_value = 0.0, bound = 0.0;
  double split_present_value = 0.0;
  double ending_value = 0.0;
  std::vector<std::vector<Share>> shares;  // by model, most acres first
  std::vector<double> uses;                // by limit
  std::vector<double> worths;              // of a unit used, by limit; empty where unknown
  std::vector<double> given_way;           // by limit, in the smallest relaxation or in this plan
  std::vector<double> scales;              // by limit
  int rounds = 0;
  std::size_t columns = 0;
};

Schedule make_schedule(const std::vector<StandModel>& models, const Limits& limits,
                       bool whole_stands, const TractOptions& options);

}  // namespace staddle
