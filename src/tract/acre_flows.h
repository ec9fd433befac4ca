// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "staddle/regime/simulate.h"
#include "staddle/tract/tract_problem.h"

namespace staddle {

// The place of a year in a row of values by years, of which the first is year 0.
inline std::size_t nth(int year) { return static_cast<std::size_t>(year); }

// What the evaluator tells of one regime, by years from its present, per acre at its
// start. Expected values; money undiscounted. As many entries as there are years until
// the land is replanted after the final harvest.
struct RegimeYears {
  std::vector<double> income, cost;       // both counted positive
  std::vector<double> establishment;      // part of cost
  std::vector<double> final_harvest;      // acres
  std::vector<double> turned_bare;        // acres that a storm or the final harvest bares
  std::vector<double> open;               // acres open at the end of the year, bare ones apart
  std::vector<std::vector<double>> tons;  // [product of the tract]
  std::size_t size() const { return income.size(); }
};

// How a stand's reports become years.
struct YearReading {
  std::vector<std::size_t> product_of;  // by product of the stand: the tract's
  std::size_t products = 0;             // of the tract
  std::optional<BasalArea> open_below;
};

RegimeYears years_of(const StandCase& stand_case, const RegimeReport& report,
                     const YearReading& reading);

// The flows of an acre in the years of a plan, 0 to its last, successors included.
struct AcreFlows {
  std::vector<double> income, cost, establishment, final_harvest, open;
  std::vector<std::vector<double>> tons;  // [product of the tract]
  double ending_value = 0.0;              // undiscounted, after the last year's flows
  double present_value = 0.0;             // of the regime and of the land after it
};

// What becomes of an acre that turns bare.
struct Land {
  enum class Fate { replanted, left_bare, sold };
  Fate fate = Fate::replanted;
  int delay_yr = 0;
  double value = 0.0;  // per acre, once the delay is over
  double rate = 0.0;   // of discount
  // By years since planting, per acre planted, its own successors included.
  AcreFlows flows;
  std::vector<double> standing_value;  // after the flows of that year

  double discount(int years) const;
  // Acres open in the plan's year `year` per acre that turned bare at `bare_year`.
  double open_in(int year, int bare_year) const;
  // Worth in the last year of a plan per acre that turned bare at `bare_year`.
  double ending_value(int last_year, int bare_year) const;
};

// The land after one rotation, `years`, that repeats itself for ever.
Land replanted_land(const RegimeYears& rotation, double value, double rate, int delay_yr,
                    int plan_years);

// One regime with the land that follows it. `present_value` is left to the caller.
AcreFlows flows_of(const RegimeYears& regime, const Land& land, int plan_years);

}  // namespace staddle
