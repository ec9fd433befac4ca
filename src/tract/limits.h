// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/tract/pricing.h"
#include "staddle/tract/tract_problem.h"
#include "tract/acre_flows.h"

namespace staddle {

// What tons a limit counts: of one product of the tract, or of all.
struct TonsMeasure {
  std::string product;
  std::vector<std::size_t> products;  // of the tract
};

// One limit of a plan in one period, as a row of a linear program over acres:
//   floor   sum over stands of acres x use >= bound,   else <= bound
// where a regime uses sum over years of by_year x the measure, per acre.
struct LimitRow {
  enum class Measure {
    income,
    establishment,
    final_harvest,
    open,
    tons,
    ending_value,  // by_year has one entry
  };
  Measure measure = Measure::income;
  std::string limit, of;  // its key in the plan; its product or group
  std::string group;      // only stands of this group count; empty: all
  std::size_t tons = 0;   // place of the tons measure
  int period = 0, from_year = 0, to_year = 0;
  bool is_floor = true;
  double bound = 0.0;
  // A difference of two periods against nothing, with no amount of its own.
  bool is_relative = false;
  int first_year = 0;  // of by_year
  std::vector<double> by_year;

  bool is_of_acres() const { return measure == Measure::final_harvest || measure == Measure::open; }
  bool counts(const std::string& stand_group) const {
    return group.empty() || group == stand_group;
  }
};

// The limits of a plan, in its order. `starting_value`: of the tract, every stand under
// its own best plan, dollars.
struct Limits {
  std::vector<TonsMeasure> tons;
  std::vector<LimitRow> rows;
  int plan_years = 0;

  bool need_open() const;
};
Limits limits_of(const TractProblem& problem, double starting_value);

// What an acre uses of a limit.
double use_of(const LimitRow& row, const Limits& limits, const AcreFlows& flows);

// The worth of a stand's measures at prices of the limits, by row: >= 0 for a row from
// below, <= 0 for one from above, in present value per unit used.
PlanWeights weights_of(const Limits& limits, const std::vector<double>& worth,
                       const std::string& stand_group);
// A present value and nothing else.
PlanWeights plain_weights(const Limits& limits, double present_value);

}  // namespace staddle
