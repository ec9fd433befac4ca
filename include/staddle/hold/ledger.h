// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "staddle/finance/tax.h"
#include "staddle/optimise/stand_problem.h"
#include "staddle/optimise/stand_solution.h"

// Hold or cut: what a standing stand earns if it stands one year more, year by year.
namespace staddle {

// V(a) is what the final harvest at age a would bring an acre, net of fee, harvest tax
// and sale cost. All money real, per acre still standing unless said.
struct LedgerRow {
  Age at;
  std::vector<Yield> tons;
  MoneyPerAcre stumpage;  // V(a)
  // What the coming year adds to V: wood, at this year's mix of products, and wood that
  // grows into better products. Absent beyond the growth model's ages.
  struct Growth {
    MoneyPerAcre volume;   // added tons x what a ton of today's mix nets
    MoneyPerAcre step_up;  // the rest of V(a+1) - V(a)
  };
  std::optional<Growth> growth;
  // (V(a+1) - V(a) + dated flows - annual cost - practices - expected storm loss) / V(a)
  std::optional<double> value_growth;  // absent also where V(a) is not above 0
  // rate x (V(a) + v^delay x land - what the years of delay cost) / V(a)
  std::optional<double> required;
  MoneyPerAcre forest_value_if_cut;  // of the regime that sells it then, at present
  MoneyPerAcre loss_against_best;    // against the best year of this ledger
};

// matures_at: the age of the highest forest value, ties the earlier (not the first year in
// which the growth falls below what is required: growth may rise again).
struct Ledger {
  std::vector<LedgerRow> years;
  Age matures_at;
};

// What waiting some years earns, from the first rows of a ledger.
struct Waiting {
  int years = 0;
  MoneyPerAcre gain;                    // of V, and money of the years between; undiscounted
  std::optional<double> growth_per_yr;  // ((V + gain) / V)^(1/years) - 1
  MoneyPerAcre gain_today;              // forest value if cut then, less if cut now
};

struct HoldAnswer {
  Ledger ledger;  // nothing is thinned; from the present on
  // The best regime with exactly one thinning, and the ledger from that thinning on: its
  // first row shows the stand just after the cut. Absent where the lattice has none.
  struct AfterThinning {
    Thinning thinning;
    Ledger ledger;
  };
  std::optional<AfterThinning> after_best_thinning;
  std::optional<Waiting> waiting;  // three years, or up to the ledger's end; absent where
                                   // the ledger has one year
};

// REQUIRES: a standing stand whose land value is filled in.
HoldAnswer hold_or_cut(const StandProblem& problem);

// The same ledgers, the same thinning, in money after tax (regime/after_tax.h): V is what
// the final harvest would leave after tax on what exceeds the basis that is then left.
// `land_value`: what an acre is worth after the harvest, after tax.
// REQUIRES: `before` is hold_or_cut(problem); a real discount rate.
HoldAnswer hold_after_tax(const StandProblem& problem, const HoldAnswer& before,
                          const TaxRules& rules, MoneyPerAcre land_value);

}  // namespace staddle
