// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/regime/after_tax.h"

#include <numeric>

namespace staddle {
namespace {

void tax_timber(StandCase& stand, double kept) {
  for (ProductPrice& price : stand.prices) {
    price.stumpage = price.stumpage * kept;
    price.thinning_discount = price.thinning_discount * kept;
  }
  stand.costs.thinning_sale_cost = stand.costs.thinning_sale_cost * kept;
  stand.costs.final_sale_cost = stand.costs.final_sale_cost * kept;
  if (!stand.standing) return;
  for (OtherTimber& timber : stand.standing->other_timber) {
    timber.stumpage = timber.stumpage * kept;
  }
}

void tax_other_money(StandCase& stand, double kept) {
  Costs& costs = stand.costs;
  costs.annual_cost = costs.annual_cost * kept;
  costs.annual_income = costs.annual_income * kept;
  for (Practice& practice : costs.practices) practice.cost = practice.cost * kept;
  for (DatedFlow& flow : costs.flows) flow.per_year = flow.per_year * kept;
  for (Peril& peril : stand.hazard.perils) peril.cleanup = peril.cleanup * kept;
}

Yield tons_standing_now(const StandCase& stand) {
  const YearRecord now = grow_unthinned(stand, stand.present()).front();
  Yield tons = std::accumulate(now.tons.begin(), now.tons.end(), Yield());
  for (const OtherTimber& timber : stand.standing->other_timber) tons += timber.now;
  return tons;
}

}  // namespace

AfterTax::AfterTax(const StandCase& before_tax, const TaxRules& rules, Area planted,
                   MoneyPerAcre land_value)
    : taxed_(before_tax) {
  const MoneyPerAcre planting = before_tax.costs.establishment;
  tax_timber(taxed_, 1.0 - rules.long_term_rate);
  tax_other_money(taxed_, 1.0 - rules.ordinary_rate);
  taxed_.land_value = land_value;
  if (rules.reforestation_deduction) {
    taxed_.costs.establishment = planting - worth_of_reforestation_deductions(
                                                planting, planted, rules, before_tax.costs.rate);
  }
  if (before_tax.standing) {
    basis_ = rules.basis;
  } else if (!rules.reforestation_deduction) {
    basis_ = planting;
  }
  if (basis_ > MoneyPerAcre()) add_basis(rules);
}

void AfterTax::add_basis(const TaxRules& rules) {
  TimberBasis basis{basis_ * rules.long_term_rate, rules.inflation, {}};
  if (taxed_.standing) {
    basis.tons = rules.basis_tons > Yield() ? rules.basis_tons : tons_standing_now(taxed_);
  }
  taxed_.basis = basis;
}

StandCase AfterTax::without_basis() const {
  StandCase stand = taxed_;
  stand.basis.reset();
  return stand;
}

Result<RegimeReport> AfterTax::report(const StatedRegime& regime) const {
  return simulate(taxed_, regime);
}

RegimeValue AfterTax::value(const Regime& regime) const { return evaluate(taxed_, regime); }

MoneyPerAcre AfterTax::worth_of_basis(const Regime& regime) const {
  if (!taxed_.basis) return {};
  return value(regime).objective - evaluate(without_basis(), regime).objective;
}

RegimeReport told_after_tax(const RegimeReport& before_tax, const AfterTax& tax) {
  StatedRegime regime{before_tax.name, {}, before_tax.final_harvest_age};
  for (const ThinningRecord& cut : before_tax.thinnings) {
    StatedThinning entry;
    entry.at = cut.at;
    entry.removal_fraction = cut.cuts_nothing ? 0.0 : cut.removal_fraction;
    regime.thinnings.push_back(entry);
  }
  return tax.report(regime).value();
}

}  // namespace staddle
