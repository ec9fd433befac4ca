// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/regime/after_tax.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "staddle/base/contract.h"
#include "staddle/finance/valuation.h"

namespace staddle {
namespace {

Yield sum_of(const std::vector<Yield>& tons) {
  return std::accumulate(tons.begin(), tons.end(), Yield());
}

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

}  // namespace

AfterTax::AfterTax(const StandCase& before_tax, const TaxRules& rules, Area planted,
                   MoneyPerAcre land_value)
    : taxed_(before_tax), rules_(rules) {
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
}

MoneyPerAcre AfterTax::relief(MoneyPerAcre nominal_basis, Age at) const {
  const double time = (at - taxed_.present()).in(years);
  return nominal_basis * (rules_.long_term_rate * std::pow(1.0 + rules_.inflation, -time));
}

Yield AfterTax::basis_tons(const RegimeReport& report) const {
  if (taxed_.standing && rules_.basis_tons > Yield()) return rules_.basis_tons;
  Yield tons;
  if (taxed_.standing) {
    tons = sum_of(report.years.front().tons);
    for (const OtherTimber& timber : taxed_.standing->other_timber) tons += timber.now;
  }
  if (tons > Yield()) return tons;
  tons = sum_of(report.final_harvest.tons) * report.final_harvest.share_standing;
  for (const ThinningRecord& cut : report.thinnings) tons += sum_of(cut.tons) * cut.share_standing;
  // Nothing is ever cut: any tons will do, the rest goes with the final harvest.
  return std::max(tons, tons_per_acre(1));
}

void AfterTax::add_basis(RegimeReport& report) const {
  if (basis_ == MoneyPerAcre()) return;
  BasisAccount account(basis_, basis_tons(report));
  MoneyPerAcre worth;
  const auto book = [&](Age at, const std::string& what, MoneyPerAcre saved) {
    worth += saved * taxed_.costs.rate.discount_factor(at - taxed_.present());
    for (CashFlowLine& line : report.cash_flow) {
      if (line.at != at || line.what != what) continue;
      line.amount += saved;
      return;
    }
    report.cash_flow.push_back({at, what, saved});
  };
  int entry = 0;
  for (ThinningRecord& cut : report.thinnings) {
    if (cut.cuts_nothing) continue;
    const MoneyPerAcre saved = relief(account.use(sum_of(cut.tons) * cut.share_standing), cut.at);
    cut.revenue += saved / cut.share_standing;
    book(cut.at, fmt::format("thinning {}", ++entry), saved);
  }
  HarvestRecord& harvest = report.final_harvest;
  const MoneyPerAcre saved = relief(account.use_rest(), report.final_harvest_age);
  harvest.revenue += saved / harvest.share_standing;
  book(report.final_harvest_age, "final harvest", saved);

  RegimeValue& value = report.value;
  value.net_present_value += worth;
  value.objective += taxed_.standing ? worth : worth / (1.0 - value.land_weight);
  report.equal_annual_equivalent = equal_annual_equivalent(value.objective, taxed_.costs.rate);
}

MoneyPerAcre AfterTax::basis_used_by_first_cut(const Regime& regime) const {
  require(!regime.thinnings.empty(), "the first cut of a regime that has a thinning");
  if (basis_ == MoneyPerAcre()) return basis_;
  const RegimeReport report = simulate(taxed_, stated("", regime)).value();
  const ThinningRecord& cut = report.thinnings.front();
  BasisAccount account(basis_, basis_tons(report));
  return account.use(sum_of(cut.tons) * cut.share_standing);
}

Result<RegimeReport> AfterTax::report(const StatedRegime& regime) const {
  Result<RegimeReport> report = simulate(taxed_, regime);
  if (report) add_basis(report.value());
  return report;
}

RegimeValue AfterTax::value(const Regime& regime) const {
  if (basis_ == MoneyPerAcre()) return evaluate(taxed_, regime);
  return report(stated("", regime)).value().value;
}

}  // namespace staddle
