// SPDX-License-Identifier: GPL-3.0-or-later
#include "futures/future_table.h"

#include "regime/evaluate.h"
#include "staddle/base/tolerance.h"

namespace staddle {

FutureTable::FutureTable(const CaseKernel& kernel, const StandCase& stand_case,
                         const Regime& regime)
    : perils_(kernel.perils().size()) {
  land_value_ = (kernel.standing() ? stand_case.land_value : evaluate(kernel, regime).objective)
                    .in(dollars_per_acre);
  std::vector<YearMoney> money;
  walk(kernel, regime, money);
  look_back(kernel, money);
}

// What an acre is worth, discounted, once all that stands on it is sold for `usd_ac`.
double FutureTable::turned_bare(const CaseKernel& kernel, int age_yr, double usd_ac) const {
  return kernel.discount(age_yr) * (usd_ac + kernel.delay_money()) +
         kernel.land_discount(age_yr) * land_value_;
}

void FutureTable::walk(const CaseKernel& kernel, const Regime& regime,
                       std::vector<YearMoney>& money) {
  const int last = regime.final_harvest.whole();
  StandPoint point = kernel.start();
  Measured measured;
  std::size_t next = 0;
  // Cuts at the point's age; what they bring falls on the acres then standing.
  const auto cut_or_harvest = [&] {
    double usd_ac = 0;
    if (next < regime.thinnings.size() && regime.thinnings[next].at.whole() == point.age_yr) {
      Cut cut;
      kernel.measure_tons(point, measured);
      kernel.work_out_cut(point, measured, regime.thinnings[next].removal_fraction, cut);
      kernel.take_cut(point, measured, cut);
      measured.age_yr = -1;
      ++next;
      usd_ac = kernel.discount(point.age_yr) * cut.revenue_usd_ac;
    }
    if (point.age_yr != last) return usd_ac;
    kernel.measure_tons(point, measured);
    return usd_ac + turned_bare(kernel, last, kernel.harvest_revenue(point, measured));
  };

  at_start_ = point.money + cut_or_harvest();
  while (point.age_yr < last) {
    const bool first_thinning_past = point.first_thinning_past;
    kernel.advance(point, measured);
    kernel.measure_tons(point, measured);
    const int at = point.age_yr;
    const double value = kernel.stumpage_value(measured, at);
    const ExposureKernel exposure = kernel.exposure(point, measured);
    FutureYear year;
    year.age_yr = at;
    year.basal_area_ft2_ac = measured.basal_area;
    year.may_clear = at < last;
    YearMoney flows;
    flows.entering = kernel.discount(at) * kernel.yearly_money(at, first_thinning_past);
    flows.cleared = turned_bare(kernel, at, kernel.harvest_revenue(point, measured));
    for (const PerilKernel& peril : kernel.perils()) {
      const double share = damage_share(peril, exposure);
      const double salvage = peril.salvage_share * value;
      year.expected_share += peril.annual_probability * share;
      flows.lost.push_back(turned_bare(kernel, at, salvage - peril.cleanup_usd_ac));
      blows_.push_back({share, 0.0, share * (value - salvage + peril.cleanup_usd_ac)});
    }
    flows.standing = kernel.discount(at) * kernel.practice_money(at) + cut_or_harvest();
    years_.push_back(year);
    money.push_back(std::move(flows));
  }
}

void FutureTable::look_back(const CaseKernel& kernel, const std::vector<YearMoney>& money) {
  // Of an acre that has just come through the storm of the year.
  double calm = 0, expected = 0;
  for (std::size_t i = years_.size(); i-- > 0;) {
    FutureYear& year = years_[i];
    calm += money[i].standing;
    expected += money[i].standing;
    year.clearing_cost_usd_ac = calm - money[i].cleared;
    year.clearing_pays =
        money[i].cleared > expected && !tolerance::values_tie(money[i].cleared, expected);
    // And before it.
    expected *= 1.0 - year.expected_share;
    for (std::size_t k = 0; k < perils_; ++k) {
      Blow& blow = blows_[i * perils_ + k];
      blow.cost_usd_ac = calm - money[i].lost[k];
      expected += kernel.perils()[k].annual_probability * blow.share * money[i].lost[k];
    }
    calm += money[i].entering;
    expected += money[i].entering;
  }
  calm_value_ = at_start_ + calm;
  expected_value_ = at_start_ + expected;
}

}  // namespace staddle
