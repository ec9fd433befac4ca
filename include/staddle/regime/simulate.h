// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "staddle/base/result.h"
#include "staddle/regime/regime.h"
#include "staddle/regime/stand_case.h"
#include "staddle/stand/stand_measures.h"

// The one evaluator of a regime: the optimiser, simulated futures, the columns of a
// linear program, tables and reports all price regimes through what stands here.
//
// Order within a year: the stand grows; the storm strikes; annual cost and dated
// flows fall on the acres that entered the year, practices on those still standing;
// then the thinning or the final harvest. With a hazard all money is expected money:
//   net present value  alpha = sum over years of v^t (money of the year)
//   land weight        beta  = sum of v^(t+g) (share of the acre that turns bare in t)
// so that a bare-land regime is worth alpha/(1 - beta) (Faustmann's land expectation
// value where nothing is lost) and a standing stand alpha + beta x land value.
namespace staddle {

// The value of one regime on one acre.
struct RegimeValue {
  MoneyPerAcre net_present_value;  // alpha: this rotation alone, no land
  double land_weight = 0.0;        // beta
  MoneyPerAcre objective;          // land expectation value; standing: forest value
};

// One thinning as it was carried out. Tons and money are per acre still standing.
struct ThinningRecord {
  Age at;
  double removal_fraction = 0.0;  // of basal area
  bool cuts_nothing = false;      // a stated residual that the stand has not reached
  StandMeasures before, after;
  std::vector<Yield> tons;        // by product; signed
  MoneyPerAcre revenue;           // net of fee, tax and sale cost
  MoneyPerAcre stumpage_left;     // as YearRecord::stumpage_value, of what is left
  double share_standing = 1.0;    // acres that storms have left
};

struct HarvestRecord {
  StandMeasures before;
  std::vector<Yield> tons;
  std::vector<Yield> other_tons;  // by other timber
  MoneyPerAcre revenue;
  double share_standing = 1.0;
};

struct CashFlowLine {
  enum class Kind { establishment, cut, other };
  Age at;
  std::string what;
  MoneyPerAcre amount;  // expected, undiscounted, per acre of the original stand
  Kind kind = Kind::other;
};

// The stand at the end of one year, before any cut of that year.
struct YearRecord {
  Age at;
  StandMeasures measures;
  std::vector<Yield> tons;
  // Tons x final prices, other timber included; with a tax basis also what selling it all
  // now would save.
  MoneyPerAcre stumpage_value;
  double expected_loss_share = 0.0;  // of the acres that entered the year
  MoneyPerAcre expected_loss;    // per acre that entered: lost stumpage less salvage, plus clean-up
  MoneyPerAcre expected_salvage; // per acre that entered
  MoneyPerAcre expected_cleanup; // per acre that entered
  double share_standing = 1.0;   // after the storm
};

// A regime priced and told year by year.
struct RegimeReport {
  std::string name;
  RegimeValue value;
  std::vector<ThinningRecord> thinnings;
  Age final_harvest_age;
  HarvestRecord final_harvest;
  std::vector<YearRecord> years;       // from the present to the final harvest
  std::vector<CashFlowLine> cash_flow; // in the order of time
  MoneyPerAcre equal_annual_equivalent;
  std::optional<double> benefit_cost_ratio;
  std::optional<double> internal_rate_of_return;
  std::vector<double> internal_rates_of_return;  // all roots found, rising
  std::string internal_rate_of_return_reason;    // why there is none; else empty

  Regime regime() const;               // the cuts that cut something
};

// Prices a regime of the lattice, fast.
// REQUIRES: ages whole, in order, not before the present, within the growth model;
// removal fractions in (0, 1) that leave trees and basal area.
RegimeValue evaluate(const StandCase& stand_case, const Regime& regime);

// Prices a stated regime and tells it year by year. The faults of an impossible one
// (ages out of order, before the present or beyond the table, a thinning at or after
// the final harvest, a cut that would take everything) are placed relative to the
// regime: "/thinnings/0/age_yr".
Result<RegimeReport> simulate(const StandCase& stand_case, const StatedRegime& regime);

// The stand year by year when nothing is ever cut, from the present to `last`.
std::vector<YearRecord> grow_unthinned(const StandCase& stand_case, Age last);

}  // namespace staddle
