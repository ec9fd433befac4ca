// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "staddle/finance/tax.h"
#include "staddle/regime/simulate.h"

namespace staddle {

// What a plan is worth after tax; standing: on land that bears the successor's plan, after
// tax too.
struct PlanAfterTax {
  RegimeValue value;
  std::optional<MoneyPerAcre> land_expectation_value;
};

// A stand as its owner keeps it after federal tax, t the long-term and o the ordinary rate:
//   timber sold            (1 - t) of what it nets, plus t times the basis used up
//   costs, income, flows   (1 - o) of them
//   planting               its cost less the worth of its deductions (finance/tax.h); where
//                          it is not deducted it adds to the basis of the trees planted
// The basis is used up by the tons cut over its tons: those stated, or else those standing
// at present; where none stand yet, each cut takes the share of it that it takes of the
// tons then standing. What is left goes with the final harvest; the basis of acres lost to
// storms is left for the next cut. A price of land is not taxed. The discount rate stays
// what it is.
//
// The case after tax is a case like any other: every question that the evaluator, the
// optimiser or a report can ask of a stand can be asked of it.
class AfterTax {
 public:
  // `planted`: the acres that are planted at once, on which the limit of the deduction
  // bears. `land_value`: standing stands, the worth of an acre after the harvest, after tax.
  // REQUIRES: a real discount rate.
  AfterTax(const StandCase& before_tax, const TaxRules& rules, Area planted,
           MoneyPerAcre land_value = {});

  const StandCase& stand_case() const { return taxed_; }
  // The same with no basis to use up: what does not wait for a cut (a storm's loss) is
  // told by it.
  StandCase without_basis() const;
  // In nominal money of the present.
  MoneyPerAcre basis() const { return basis_; }

  // As simulate() and evaluate(), after tax.
  Result<RegimeReport> report(const StatedRegime& regime) const;
  RegimeValue value(const Regime& regime) const;
  // What the basis adds to a regime's objective.
  MoneyPerAcre worth_of_basis(const Regime& regime) const;

 private:
  void add_basis(const TaxRules& rules);

  StandCase taxed_;
  MoneyPerAcre basis_;
};

// The plan that `before_tax` tells, told after tax: the same cuts, those that cut nothing
// included.
RegimeReport told_after_tax(const RegimeReport& before_tax, const AfterTax& tax);

}  // namespace staddle
