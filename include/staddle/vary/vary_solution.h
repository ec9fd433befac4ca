// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "staddle/optimise/stand_solution.h"
#include "staddle/regime/after_tax.h"
#include "staddle/vary/vary_question.h"

namespace staddle {

// The best of the lattice under one set of circumstances, as an independent search of the
// whole lattice finds it.
struct VaryAnswer {
  std::optional<PricedRegime> best;       // absent: no regime, for the reason below
  std::optional<PricedRegime> successor;  // standing: the regime behind LEV*
  MoneyPerAcre land_value;                // standing: of an acre after the harvest
  std::string reason;
  // Where tax is asked for and there is a best: what it leaves, and standing what the land
  // is then worth. The plans stay those found before tax.
  std::optional<PlanAfterTax> after_tax = std::nullopt;
  MoneyPerAcre land_value_after_tax = {};

  std::optional<MoneyPerAcre> value() const {
    if (!best) return std::nullopt;
    return best->value.objective;
  }
  std::optional<MoneyPerAcre> value_after_tax() const {
    if (!after_tax) return std::nullopt;
    return after_tax->value.objective;
  }
};

struct VaryCell {
  DiscountRate rate;
  std::size_t price_scenario = 0;  // in VarySolution::price_scenarios
  VaryAnswer answer;
};

// What a regime loses in every cell.
struct Losses {
  std::vector<std::optional<MoneyPerAcre>> loss;  // by cell
  std::optional<MoneyPerAcre> worst, mean;  // mean by the weights of the price scenarios
};

// A regime held in every cell: on bare land for every rotation, on a standing stand for
// this one. Loss is that cell's best less it; negative where a regime that breaks limits
// is worth more. Cells without a best have none.
struct RegimeLosses : Losses {
  std::string name;                       // "base optimum", or as stated
  Regime regime;
  // Against the same best, after tax; negative where it is worth more than that then.
  std::optional<Losses> after_tax;
};

struct OneAtATime {
  ParameterSpan span;
  // At the low and at the high end.
  std::array<std::optional<MoneyPerAcre>, 2> plan_held;
  std::array<std::optional<MoneyPerAcre>, 2> plan_held_after_tax;
  std::array<VaryAnswer, 2> reoptimised;
  std::array<bool, 2> plan_changes{};     // another regime than the base optimum
  // Where it does: a value at which the best regime changes, to the step of step_of().
  std::array<std::optional<double>, 2> changes_at;
  std::optional<MoneyPerAcre> swing() const;  // between the re-optimised ends, >= 0
  std::optional<MoneyPerAcre> swing_after_tax() const;
};

struct GridAnswer {
  GridQuestion question;
  std::vector<std::vector<VaryAnswer>> cells;  // [y][x]
};

// A value of one parameter at which something turns, the one nearest to today's. It is
// one end of a bracket of neighbouring steps (a cent, or a hundredth of a percent) at the
// ends of which the thing is not the same: proved by two solves.
struct BreakEven {
  std::string what;                       // "the first thinning stops paying"
  std::string parameter;
  std::string unit;                       // "$/ton"
  std::optional<double> value;
  std::optional<std::array<double, 2>> bracket;
  std::array<double, 2> searched{};       // from, to
  std::string reason;                     // why there is none; else empty
  // Where tax is asked for: where it turns in money after tax. What the plan does turns
  // where it did, since the plan is the one found before tax.
  struct AfterTax {
    std::optional<double> value;
    std::optional<std::array<double, 2>> bracket;
    std::string reason;
  };
  std::optional<AfterTax> after_tax = std::nullopt;
};

struct VarySolution {
  bool standing = false;
  VaryAnswer base;                        // the scenario as it is
  std::vector<PriceScenario> price_scenarios;  // "base" first
  std::vector<VaryCell> cells;            // rate by rate, within a rate by price scenario
  std::vector<RegimeLosses> regimes;      // the base optimum, then as stated
  std::optional<std::size_t> least_worst_loss, best_on_average;  // in `regimes`
  std::vector<OneAtATime> one_at_a_time;  // by swing, the largest first
  std::optional<GridAnswer> grid;
  std::vector<BreakEven> break_evens;
};

}  // namespace staddle
