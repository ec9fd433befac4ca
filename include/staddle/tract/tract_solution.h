// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "staddle/regime/simulate.h"
#include "staddle/units/units.h"

namespace staddle {

// Some acres of a stand under one regime.
struct RegimeShare {
  Area acres;
  // Told by the evaluator: bare land as a land that bears the same regime for ever,
  // standing on the land value of RegimeShare::land_value.
  RegimeReport report;
  MoneyPerAcre land_expectation_value;       // bare: of the regime; standing: LEV*, if known
  std::optional<MoneyPerAcre> forest_value;  // standing
  // What an acre counts in the tract's present value: this rotation plus its land weight
  // times land_value.
  MoneyPerAcre present_value;
  MoneyPerAcre land_value;
};

struct StandSchedule {
  std::string name;
  std::vector<RegimeShare> regimes;  // most acres first; their acres sum to the stand's
  // The stand's own best, as optimise's solve() finds it, without any limit of the plan.
  Regime unlimited;
  MoneyPerAcre unlimited_value;
  bool planting_known = true;  // false: LEV* of a standing stand is unknown
};

// One job in the woods within the plan. Expected acres where storms are.
struct TractAction {
  enum class Kind { thinning, final_harvest, planting };
  int year = 0;  // of the plan; 0: the present year
  std::size_t stand = 0;
  Kind kind = Kind::thinning;
  bool successor = false;  // of the trees planted after a final harvest of the plan
  Area acres;
  double removal_fraction = 0.0;  // of a thinning, of basal area
  std::vector<Weight> tons;       // by product of the tract; not of a planting
  Money money;                    // net revenue; of a planting its cost, negative
};

// A year or a period of the tract, expected values, undiscounted. Income: cuts net of
// fee, harvest tax and sale cost, salvage, annual income, flows that are positive. Cost:
// everything else, positive. The price of land is in neither.
struct TractPeriod {
  int from_year = 0;
  int to_year = 0;
  Money income, cost;
  Money establishment;  // part of cost
  Area final_harvest_acres;
  std::vector<Weight> tons;  // by product of the tract
  Area open_acres;           // where the plan asks for them: the least of its years
};

// What a limit costs at the margin.
struct LimitCost {
  std::string limit;  // its key in the plan: "income_floor_usd", "tons/min_per_period"
  std::string of;     // its product or group; empty where it has none
  int period = 0;     // from 1; 0: the whole plan (ending value)
  int from_year = 0, to_year = 0;
  // Present value lost for one unit by which the limit is made stricter, dollars, >= 0.
  double shadow_price = 0.0;
  std::string unit;      // "usd of present value per usd of income"
  std::string text;      // one sentence
  bool is_floor = true;  // a limit from below
};

// A limit that gives way in the smallest relaxation.
struct LimitConflict {
  std::string limit;
  std::string of;
  int period = 0;
  int from_year = 0, to_year = 0;
  double asked = 0.0;
  double most_possible = 0.0;  // of a limit from above: the least possible
  std::string unit;
  std::string text;
  bool is_floor = true;
};

// status         meaning                           fields
// optimal        bound - value within max_gap, or   all; limit_costs without whole_stands
//                within tolerance::tract_proof      of the linear program, else of that
//                                                   without the wish for whole stands
// limit_reached  a stop or the time came first     the best plan met; where keeps_limits is
//                                                   false, no plan within the limits was met
//                                                   and conflicts tells what this one breaks
// infeasible     no plan keeps all limits           conflicts: a smallest relaxation (sum of
//                                                   violations as shares of what is asked);
//                                                   the best plan under it; bound and
//                                                   limit_costs are of the relaxed tract
struct TractSolution {
  enum class Status { optimal, limit_reached, infeasible };
  Status status = Status::limit_reached;
  std::string message;  // one sentence on the status
  bool keeps_limits = false;
  double max_gap_asked = 0.0;

  Money present_value;        // of the plan
  Money bound;                // no plan that keeps the limits is worth more
  double gap_fraction = 0.0;  // (bound - value)/max(1, |value|), >= 0
  Money unlimited_present_value;
  Money starting_value, ending_value;  // as ending_value_min_fraction compares them
  // Present value of the best plan that may split stands; equals present_value without
  // whole_stands.
  Money split_present_value;

  std::vector<std::string> products;  // of the tract
  std::vector<StandSchedule> stands;  // in the order of the problem
  std::vector<TractAction> actions;   // by year, then by stand
  std::vector<TractPeriod> periods;
  std::vector<TractPeriod> years;      // 0 to plan.years
  std::vector<LimitCost> limit_costs;  // those that cost something, in the plan's order
  std::vector<LimitConflict> conflicts;
  int rounds = 0;                    // of column generation; enumerated: 0
  std::size_t columns = 0;           // regimes that entered the linear program
  std::vector<std::string> assumed;  // sentences
};

}  // namespace staddle
