// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "regime/case_kernel.h"
#include "staddle/regime/simulate.h"

namespace staddle {

// Writes down, line by line, the money that the case kernel adds up: the same years,
// the same shares of the acre, but each cost and income under its own name. The lines
// discounted to the present sum to the kernel's net present value (a test holds them to
// it). Amounts are expected dollars per acre of the original stand.
class CashBook {
 public:
  explicit CashBook(const StandCase& stand_case);

  // Establishment and what is done at planting; nothing on a standing stand.
  void plant();
  // Annual and dated money on the acres that entered the year, practices on those left.
  void pass_year(int age_yr, double entered, double left, bool first_thinning_past);
  // Salvage, clean-up, and the annual money of the lost acres while they wait.
  void storm(int age_yr, double entered, const StormYear& year);
  void wait_to_replant(int age_yr, double acres_bare);
  void enter(int age_yr, const std::string& what, double usd_ac,
             CashFlowLine::Kind kind = CashFlowLine::Kind::other);

  // In the order of time; within a year in the order in which they were entered.
  std::vector<CashFlowLine> lines() const;

 private:
  const StandCase& case_;
  std::vector<CashFlowLine> lines_;
  std::vector<double> waiting_;  // by age: share of the acre bare and waiting
};

}  // namespace staddle
