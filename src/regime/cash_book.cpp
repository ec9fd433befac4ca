// SPDX-License-Identifier: GPL-3.0-or-later
#include "regime/cash_book.h"

#include <algorithm>

namespace staddle {

CashBook::CashBook(const StandCase& stand_case) : case_(stand_case) {}

void CashBook::enter(int age_yr, const std::string& what, double usd_ac,
                     CashFlowLine::Kind kind) {
  if (usd_ac == 0.0) return;
  lines_.push_back({age(age_yr), what, dollars_per_acre(usd_ac), kind});
}

void CashBook::plant() {
  if (case_.standing) return;
  enter(0, "establishment", -case_.costs.establishment.in(dollars_per_acre),
        CashFlowLine::Kind::establishment);
  for (const Practice& practice : case_.costs.practices) {
    if (practice.at.whole() == 0) enter(0, practice.what, -practice.cost.in(dollars_per_acre));
  }
}

void CashBook::pass_year(int age_yr, double entered, double left, bool first_thinning_past) {
  enter(age_yr, "annual cost", -entered * case_.costs.annual_cost.in(dollars_per_acre));
  enter(age_yr, "annual income", entered * case_.costs.annual_income.in(dollars_per_acre));
  for (const DatedFlow& flow : case_.costs.flows) {
    if (age_yr < flow.from.whole()) continue;
    if (flow.until == DatedFlow::Until::age && age_yr > flow.to.whole()) continue;
    if (flow.until == DatedFlow::Until::first_thinning && first_thinning_past) continue;
    enter(age_yr, flow.what, entered * flow.per_year.in(dollars_per_acre));
  }
  for (const Practice& practice : case_.costs.practices) {
    if (practice.at.whole() == age_yr) {
      enter(age_yr, practice.what, -left * practice.cost.in(dollars_per_acre));
    }
  }
}

void CashBook::storm(int age_yr, double entered, const StormYear& year) {
  if (year.loss_share == 0.0) return;
  enter(age_yr, "storm salvage", entered * year.salvage_usd_ac);
  enter(age_yr, "storm clean-up", -entered * year.cleanup_usd_ac);
  wait_to_replant(age_yr, entered * year.loss_share);
}

void CashBook::wait_to_replant(int age_yr, double acres_bare) {
  for (int j = 1; j <= case_.costs.regeneration_delay_yr; ++j) {
    const std::size_t at = static_cast<std::size_t>(age_yr + j);
    if (waiting_.size() <= at) waiting_.resize(at + 1, 0.0);
    waiting_[at] += acres_bare;
  }
}

std::vector<CashFlowLine> CashBook::lines() const {
  std::vector<CashFlowLine> result = lines_;
  for (std::size_t at = 0; at < waiting_.size(); ++at) {
    if (waiting_[at] == 0.0) continue;
    for (const auto& [what, money] :
         {std::pair{"annual cost while bare", -case_.costs.annual_cost},
          std::pair{"annual income while bare", case_.costs.annual_income}}) {
      if (money == dollars_per_acre(0)) continue;
      result.push_back({age(static_cast<double>(at)), what, waiting_[at] * money});
    }
  }
  std::stable_sort(result.begin(), result.end(),
                   [](const CashFlowLine& a, const CashFlowLine& b) { return a.at < b.at; });
  return result;
}

}  // namespace staddle
