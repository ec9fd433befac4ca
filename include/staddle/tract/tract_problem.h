// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "staddle/base/error.h"
#include "staddle/optimise/stand_problem.h"
#include "staddle/units/units.h"

namespace staddle {

// What becomes of an acre of a standing stand after its final harvest, or once a storm
// has taken it.
struct LandAfterHarvest {
  enum class Kind {
    replant,                // the successor, whatever it is worth
    replant_if_worthwhile,  // the successor where its land expectation value is not negative
    land_price,             // the land is worth this price, and nothing follows on it
  };
  Kind kind = Kind::replant;
  MoneyPerAcre price;  // with land_price
};

struct TractStand {
  std::string name;   // of its own within the tract
  std::string group;  // of adjacent stands; empty: none
  // Its acres are the stand's. A land value in it is not read.
  StandProblem problem;
  // Standing: the bare-land problem of what is planted afterwards; may be absent with a
  // land price. Bare land is followed by the same problem again; what stands here, and
  // after_harvest, is not read then.
  std::optional<StandProblem> successor = std::nullopt;
  LandAfterHarvest after_harvest = {};
};

// Years of a plan count from the present: 1 is the coming year. What falls into the
// present year itself, year 0, counts in the first period. The limits below are over
// expected values where storms are.

// Income of every period that meets the years, per_year times the years covered.
struct IncomeFloor {
  int from_year = 1;
  int to_year = 1;
  Money per_year;
};

// Tons cut, by thinnings and final harvests; not what storms leave to be salvaged, and
// not other timber.
struct TonsLimit {
  std::string product;  // by name, or "all"
  std::optional<Weight> min_per_period, max_per_period;
  std::optional<double> max_change_fraction;  // against the period before, up or down
};

// Acres whose basal area at the end of every year from `from_year` on is below the limit,
// bare and newly planted ones among them; not acres that were sold.
struct OpenStand {
  BasalArea basal_area_below;
  Area acres_min;
  int from_year = 1;
};

struct TractPlan {
  int years = 30;  // 1 to 200, a multiple of period_yr
  int period_yr = 1;
  std::vector<IncomeFloor> income_floors;
  std::optional<double> income_max_drop_fraction;  // of the period before
  std::optional<Area> final_harvest_acres_max_per_period;
  std::optional<Area> group_final_harvest_acres_max_per_period;  // of each named group
  std::vector<TonsLimit> tons;
  std::optional<OpenStand> open_stand;
  // The undiscounted worth of the tract at the end of the plan is at least this share of
  // its worth at the start, every stand under its own best plan.
  std::optional<double> ending_value_min_fraction;
  std::optional<Money> establishment_max_per_period;  // planting and site preparation
  bool whole_stands = false;                          // one regime for all acres of a stand

  int periods() const { return years / period_yr; }
};

// maximise    sum over stands and regimes of acres x forest value
// subject to  the acres of a stand's regimes sum to the stand's
//             every limit of the plan
// The forest value of a regime is what the evaluator says (regime/simulate.h) on land
// worth what follows: standing, by after_harvest; bare land, its own best land
// expectation value.
struct TractProblem {
  std::vector<TractStand> stands;
  TractPlan plan;
  std::optional<int> calendar_year;  // of the present, for texts
};

// What keeps a tract from being solved, placed as in the file: "/plan/period_yr".
// That a stand has no regime at all is found by solve().
Faults faults_of(const TractProblem& problem);

// The names of the tract's products, in the order in which its stands have them.
std::vector<std::string> product_names(const TractProblem& problem);

}  // namespace staddle
