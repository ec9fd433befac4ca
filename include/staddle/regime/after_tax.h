// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "staddle/finance/tax.h"
#include "staddle/regime/simulate.h"

namespace staddle {

// A stand as its owner keeps it after federal tax, t the long-term and o the ordinary rate:
//   timber sold            (1 - t) of what it nets, plus t times the basis used up
//   costs, income, flows   (1 - o) of them
//   planting               its cost less the worth of its deductions (finance/tax.h); where
//                          it is not deducted it adds to the basis of the trees planted
// The basis is used up by the tons cut over its tons (those standing at present, or else all
// that the regime cuts), what is left of it by the final harvest; the basis of acres lost
// to storms is left for the next cut. A price of land is not taxed. The discount rate
// stays what it is.
class AfterTax {
 public:
  // `planted`: the acres that are planted at once, on which the limit of the deduction
  // bears. `land_value`: standing stands, the worth of an acre after the harvest, after tax.
  // REQUIRES: a real discount rate.
  AfterTax(const StandCase& before_tax, const TaxRules& rules, Area planted,
           MoneyPerAcre land_value = {});

  // The case with prices and costs net of tax; a basis is not in it.
  const StandCase& stand_case() const { return taxed_; }
  // The basis, in nominal money of the present; zero: no part of any regime's value.
  MoneyPerAcre basis() const { return basis_; }

  // As simulate() and evaluate(), after tax. Ratios of the report (rates of return,
  // benefit and cost) are those of the payments without the basis.
  Result<RegimeReport> report(const StatedRegime& regime) const;
  RegimeValue value(const Regime& regime) const;

  // The nominal basis that goes with the first cut of a regime; zero without a basis.
  // REQUIRES: a thinning.
  MoneyPerAcre basis_used_by_first_cut(const Regime& regime) const;

  // What using up this much basis at `at` saves, in real money of that time.
  MoneyPerAcre relief(MoneyPerAcre nominal_basis, Age at) const;

 private:
  void add_basis(RegimeReport& report) const;
  Yield basis_tons(const RegimeReport& report) const;

  StandCase taxed_;
  TaxRules rules_;
  MoneyPerAcre basis_;
};

}  // namespace staddle
