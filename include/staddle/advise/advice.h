// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "staddle/advise/fitted_ranges.h"
#include "staddle/optimise/solve.h"
#include "staddle/optimise/stand_solution.h"
#include "staddle/regime/after_tax.h"
#include "staddle/regime/simulate.h"
#include "staddle/signs/readiness.h"
#include "staddle/signs/risk_notes.h"

// The whole answer to "when should I cut, how much, and what is it worth", as data: every
// writer (text, JSON, page, spreadsheet) prints from here and adds no figure of its own.
namespace staddle {

// One regime in short.
struct Plan {
  Regime regime;
  RegimeValue value;
  MoneyPerAcre land_expectation_value;  // bare: of the regime; standing: LEV*
  std::optional<PlanAfterTax> after_tax = std::nullopt;  // where tax is asked for
};

struct StatedAnswer {
  RegimeReport report;
  MoneyPerAcre loss_against_best;  // negative where a regime that breaks limits is worth more
  std::vector<BrokenLimit> breaks;
  std::size_t table = 0;          // of tabled choices: which one it is
};

struct Alternative {
  int thinnings = 0;
  RegimeReport report;
  MoneyPerAcre loss_against_best;
  std::size_t table = 0;  // as in StatedAnswer
};

// What a guard costs under equations that do not know the risk it guards against: the
// best value with it alone switched off, less the best. For the exception
// dense_stand_now: the best less the value without it.
struct GuardCost {
  std::string guard;       // its key
  MoneyPerAcre cost;
  std::optional<Plan> otherwise;  // the best plan with the guard switched

  bool is_exception() const { return guard == "dense_stand_now"; }
};

// Whether the advice stands when the world differs. It is the same advice when what is
// done this year is unchanged (nothing, a thinning within 5 points of the share, the final
// harvest), the thinnings are as many, and every age is within two years.
struct Survival {
  std::string change;      // "growth -15 %"
  std::optional<Plan> best;
  bool same_advice = false;
  // Below zero where the plan, kept, breaks limits of the lattice.
  MoneyPerAcre kept_plan_loss;
  std::optional<MoneyPerAcre> kept_plan_loss_after_tax = std::nullopt;
  std::vector<BrokenLimit> kept_plan_breaks = {};
};

// The best plan that cuts nothing for five years (standing stands).
struct WaitFiveYears {
  Plan plan;
  MoneyPerAcre loss_against_best;
  StandMeasures then;      // the stand at the end of the wait, before any cut
};

// Everything sold today (standing stands), timber and land apart.
struct SellToday {
  MoneyPerAcre timber;     // net of fee, tax and sale cost
  MoneyPerAcre land;       // present worth of the land after the harvest
  MoneyPerAcre loss_against_best;
};

// The best plan when every cut is held to a third.
struct ThirdInstead {
  Plan best;
  MoneyPerAcre cost;        // the best less it
  MoneyPerAcre loss_saved;  // expected storm loss after thinnings that it saves, today's worth
};

// The cut of this year that an owner may be made an offer for.
struct SaleNow {
  Regime plan;                 // the best of those that thin or sell this year
  MoneyPerAcre net_revenue;    // of this year's cut
  MoneyPerAcre refuse_below;   // net: below it, cutting nothing this year is worth more
  Regime patient;              // the best of those that cut nothing this year
};

// A stand known from plots, solved again at both ends of the 90 percent interval of its
// basal area, trees in proportion.
struct PlotsAnswer {
  struct End {
    BasalArea basal_area;           // of the plots
    std::optional<Plan> best;       // absent: no regime of the lattice
  };
  End low, high;
  bool same_advice = false;         // as in Survival, at both ends
  // n ((half width / distance from the mean to the nearest basal area where the advice
  // changes)^2 - 1), rounded up; 0 where it holds. Absent where the advice changes so
  // near the mean that more than a thousand times the plots would be needed.
  std::optional<int> more_plots;
};

struct StormAnswer {
  Plan blind_plan;                 // found without storms, priced with them
  MoneyPerAcre blind_plan_loss;
  struct OddsRow {
    std::optional<double> odds_ratio;  // absent: the defaults
    Plan best;
    bool same_advice = false;
  };
  std::vector<OddsRow> odds_ratios;
  std::optional<ThirdInstead> third_instead;  // as in Advice
  std::vector<StormAfterThinning> thinnings;
};

// The money of an answer after tax: the same plans, found before tax, priced after it, each
// thing as in Advice.
struct AdviceAfterTax {
  RegimeReport best;
  std::optional<RegimeReport> successor;
  std::optional<MoneyPerAcre> successor_lev;
  MoneyPerAcre land_value;
  std::vector<RegimeReport> regimes, alternatives;
  std::vector<MoneyPerAcre> guard_costs;
  std::optional<SellToday> sell_today;
  std::optional<MoneyPerAcre> wait_five_loss;
  std::optional<MoneyPerAcre> waiting_earns;
  MoneyPerAcre advantage;
  std::optional<SaleNow> sale_now;
  std::optional<ThirdInstead> third_instead;
  std::optional<MoneyPerAcre> blind_plan_loss;
  std::vector<StormAfterThinning> storms;
  // The plan that is worth most after tax, found by a search of its own, what comes near it
  // then, and how much any other plan could be worth more: nothing, unless the timber has a
  // basis and the lattice more regimes than are valued one by one for it. Then the plan is
  // the best of those that are best without the basis for every number of thinnings and
  // final age, and what comes near is told without it.
  Plan best_after_tax;
  NearBest near_best;
  Certificate certificate;
};

struct Advice {
  bool standing = false;
  Plan best_plan;
  RegimeReport best;
  std::optional<RegimeReport> successor;   // standing: the regime behind LEV*
  std::optional<MoneyPerAcre> successor_lev;  // standing: LEV*, where planted trees are known
  MoneyPerAcre land_value;                 // standing: what an acre is worth after harvest
  std::vector<StatedAnswer> regimes;
  std::vector<Alternative> alternatives;
  std::vector<int> counts_without_regime;  // no regime of the lattice has so many thinnings
  NearBest near_best;
  std::vector<GuardCost> guard_costs;
  Certificate certificate;
  std::vector<RiskNote> risk_notes;
  std::vector<Survival> survives;
  Readiness readiness;                     // standing; bare land: of the unthinned stand
  std::string readiness_judgement;         // one sentence; says what waiting earns
  std::optional<MoneyPerAcre> waiting_earns;  // signs say due or late, the best plan waits:
                                           // best less the best that thins this year
  std::optional<SellToday> sell_today;
  std::optional<WaitFiveYears> wait_five;
  MoneyPerAcre advantage;                  // over selling today; bare: over never thinning
  std::optional<SaleNow> sale_now;         // standing, where a cut this year is in question
  std::optional<ThirdInstead> third_instead;  // where some cut of the best exceeds a third
  std::optional<StormAnswer> storm;        // with a hazard
  std::optional<AdviceAfterTax> after_tax; // where tax is asked for
  std::optional<PlotsAnswer> plots;        // where the stand comes from plots
  std::vector<OutsideRange> outside_fitted_range;  // the best first; none for a yield table
  int first_cuts_shut_by_one_ton_rule = 0;
  std::optional<Age> first_age_with_minimum_sale;  // when a sale limit shuts every thinning
                                           // now: the age at which it is first met
};

}  // namespace staddle
