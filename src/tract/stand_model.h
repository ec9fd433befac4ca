// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "staddle/base/result.h"
#include "staddle/optimise/stand_solution.h"
#include "staddle/tract/tract_options.h"
#include "staddle/tract/tract_problem.h"
#include "tract/acre_flows.h"

namespace staddle {

// A stand of a tract made ready: on land worth what follows, with its own best plan.
struct StandModel {
  std::size_t place = 0;  // in the problem's list
  std::string name, group;
  double acres = 0.0;
  StandProblem problem;                       // its land value filled in
  std::optional<MoneyPerAcre> successor_lev;  // standing
  PricedRegime own_best;
  std::vector<PricedRegime> own_by_count;  // best with each number of thinnings
  double own_value = 0.0;                  // of own_best, per acre
  Land land;
  std::optional<RegimeReport> rotation;  // of the trees planted on it
  YearReading reading;

  bool standing() const { return problem.stand_case.standing.has_value(); }
  // What a regime of this stand counts in the tract, per acre.
  double present_value(const RegimeValue& value) const {
    return value.net_present_value.in(dollars_per_acre) + value.land_weight * land.value;
  }
  // The evaluator's report of a regime of this stand's lattice, and its flows.
  RegimeReport report_of(const Regime& regime) const;
  AcreFlows flows_of(const RegimeReport& report, int plan_years) const;
};

// In the order of their names, whatever the problem's. Faults: stands or successors
// without a regime. A stop leaves the list empty.
Result<std::vector<StandModel>> make_stand_models(const TractProblem& problem,
                                                  const TractOptions& options);

}  // namespace staddle
