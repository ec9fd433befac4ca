// SPDX-License-Identifier: GPL-3.0-or-later
#include "regime/case_kernel.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "staddle/base/contract.h"
#include "staddle/hazard/damage.h"
#include "stand/stand_constants.h"

namespace staddle {
namespace {

double log_diameter_of(double log_tpa, double log_basal_area) {
  static const double log_factor = std::log(basal_area_factor);
  return 0.5 * (log_basal_area - log_factor - log_tpa);
}

double sum_of(const ProductTons& tons, std::size_t products) {
  return std::accumulate(tons.begin(), tons.begin() + static_cast<std::ptrdiff_t>(products), 0.0);
}

}  // namespace

CaseKernel::CaseKernel(const StandCase& stand_case)
    : growth_model_(stand_case.growth),
      assortment_model_(stand_case.assortment),
      growth_(growth_model_.kernel()),
      assortment_(assortment_model_.kernel()),
      standing_(stand_case.standing.has_value()),
      present_yr_(stand_case.present().whole()),
      crown_limited_(stand_case.thinning_response == ThinningResponse::crown_limited),
      multiplier_(stand_case.growth_multiplier),
      land_value_(stand_case.land_value.in(dollars_per_acre)),
      ratios_(stand_case.cut_diameter_ratios),
      tabled_cuts_(stand_case.tabled_cuts),
      recovery_yr_(stand_case.hazard.recovery_yr) {
  require(!ratios_.empty(), "a case has at least one cut diameter ratio");
  require(stand_case.prices.size() == products(), "a case has one price per product");
  make_money_tables(stand_case);
  for (const Peril& peril : stand_case.hazard.perils) perils_.push_back(make_peril_kernel(peril));

  start_.age_yr = start_.stretch_from_yr = present_yr_;
  if (!standing_) {
    start_.trees = growth_.planted_track();
    start_.money = practices_.front() - stand_case.costs.establishment.in(dollars_per_acre);
    return;
  }
  const MeasuredStand& stand = *stand_case.standing;
  const AgeRow& row = growth_.row(present_yr_);
  require(row.timber, "a measured stand needs a growth model with basal area at its age");
  const double tpa = stand.trees.in(trees_per_acre);
  const double basal_area = stand.basal_area.in(square_feet_per_acre);
  start_.trees = growth_.track(tpa, present_yr_);
  start_.competition =
      1.0 - basal_area / std::exp(growth_.log_unthinned_basal_area(row, std::log(tpa)));
  start_.recovery_per_yr = growth_.recovery_per_yr();
  start_.planted_untouched = false;
  const double diameter = quadratic_mean_diameter(stand.trees, stand.basal_area).in(inches);
  if (stand.live_crown_ratio) crown_offset_ = *stand.live_crown_ratio - crown_ratio(row, diameter);
  if (stand.last_thinning) {
    start_.first_thinning_past = true;
    start_.memory[0] = {stand.last_thinning->at.whole(),
                        opening_of_cut(stand.last_thinning->removal_fraction), 0.0};
    start_.memories = 1;
  }
  Measured now;
  measure_tons(start_, now);
  start_.plain_start = start_.scaled_start = now.plain_tons;
}

void CaseKernel::make_money_tables(const StandCase& stand_case) {
  const Costs& costs = stand_case.costs;
  const double v = costs.rate.discount_factor(years(1));
  annual_net_ = (costs.annual_income - costs.annual_cost).in(dollars_per_acre);
  delay_discount_ = costs.rate.discount_factor(years(costs.regeneration_delay_yr));
  delay_money_ = 0.0;
  for (int j = 1; j <= costs.regeneration_delay_yr; ++j) {
    delay_money_ += annual_net_ * costs.rate.discount_factor(years(j));
  }
  net_share_ = 1.0 - costs.sale_fee_fraction - costs.harvest_tax_fraction;
  thinning_sale_cost_ = costs.thinning_sale_cost.in(dollars_per_acre);
  final_sale_cost_ = costs.final_sale_cost.in(dollars_per_acre);
  for (std::size_t i = 0; i < products(); ++i) {
    final_price_[i] = stand_case.prices[i].stumpage.in(dollars_per_ton);
    thinning_price_[i] = net_thinning_price(stand_case.prices[i]).in(dollars_per_ton);
  }
  const std::size_t count = static_cast<std::size_t>(last_age_yr() - present_yr_ + 1);
  for (std::size_t i = 0; i < count; ++i) {
    discount_.push_back(costs.rate.discount_factor(years(static_cast<double>(i))));
    double other = 0.0;
    if (stand_case.standing) {
      for (const OtherTimber& timber : stand_case.standing->other_timber) {
        other += (timber.now * timber.stumpage)
                     .in(dollars_per_acre)*std::pow(1.0 + timber.growth_fraction_per_yr,
                                                    static_cast<double>(i));
      }
    }
    other_timber_.push_back(other);
  }
  require(std::isfinite(v) && v > 0.0, "a case has a usable discount rate");
  if (stand_case.basis) {
    basis_tons_ = stand_case.basis->tons.in(tons_per_acre);
    for (std::size_t i = 0; i < count; ++i) {
      basis_saves_.push_back(
          stand_case.basis->saves.in(dollars_per_acre)*std::pow(
              1.0 + stand_case.basis->inflation, -static_cast<double>(i)));
    }
  }
  yearly_before_.assign(count, annual_net_);
  yearly_after_.assign(count, annual_net_);
  cost_before_.assign(count, costs.annual_cost.in(dollars_per_acre));
  cost_after_ = cost_before_;
  practices_.assign(count, 0.0);
  const auto is_future = [&](int age_yr) {
    return age_yr > present_yr_ && age_yr <= last_age_yr();
  };
  for (const DatedFlow& flow : costs.flows) {
    const int to = flow.until == DatedFlow::Until::age ? flow.to.whole() : last_age_yr();
    for (int t = std::max(1, flow.from.whole()); t <= to; ++t) {
      if (!is_future(t)) continue;
      const double amount = flow.per_year.in(dollars_per_acre);
      const bool stays = flow.until != DatedFlow::Until::first_thinning;
      yearly_before_[index(t)] += amount;
      cost_before_[index(t)] += std::max(0.0, -amount);
      if (stays) yearly_after_[index(t)] += amount;
      if (stays) cost_after_[index(t)] += std::max(0.0, -amount);
    }
  }
  for (const Practice& practice : costs.practices) {
    const int t = practice.at.whole();
    const bool at_planting = t == 0 && !standing_;
    if (at_planting || is_future(t)) {
      practices_[index(t)] -= practice.cost.in(dollars_per_acre);
    }
  }
}

StandPoint CaseKernel::start() const { return start_; }

void CaseKernel::measure(const StandPoint& point, Measured& measured) const {
  if (measured.age_yr == point.age_yr) return;
  measured.age_yr = point.age_yr;
  measured.tons_known = false;
  measured.row = &growth_.row(point.age_yr);
  measured.timber = measured.row->timber;
  if (!measured.timber) {
    measured.tpa = measured.row->known ? growth_.trees_at(point.trees, point.age_yr) : 0.0;
    measured.basal_area = measured.diameter_in = 0.0;
    measured.crown_ratio = 1.0;
    return;
  }
  measured.tpa = growth_.trees_at(point.trees, point.age_yr);
  measured.log_tpa = std::log(measured.tpa);
  measured.log_unthinned = growth_.log_unthinned_basal_area(*measured.row, measured.log_tpa);
  const double competition =
      point.competition * std::exp(-point.recovery_per_yr * (point.age_yr - point.stretch_from_yr));
  measured.log_basal_area = measured.log_unthinned + std::log1p(-competition);
  measured.basal_area = std::exp(measured.log_basal_area);
  measured.log_diameter = log_diameter_of(measured.log_tpa, measured.log_basal_area);
  measured.diameter_in = std::exp(measured.log_diameter);
  measured.crown_ratio = crown_ratio(*measured.row, measured.diameter_in);
}

void CaseKernel::measure_tons(const StandPoint& point, Measured& measured) const {
  measure(point, measured);
  if (measured.tons_known) return;
  measured.tons_known = true;
  if (!measured.timber &&
      !(growth_.from_table() && point.planted_untouched && measured.row->known)) {
    std::fill_n(measured.plain_tons.begin(), products(), 0.0);
  } else {
    const StandTerms terms{point.age_yr, measured.log_tpa, measured.log_basal_area,
                           measured.log_diameter, point.planted_untouched};
    assortment_.tons(*measured.row, terms, measured.plain_tons.data());
  }
  scale_tons(point, measured);
}

void CaseKernel::scale_tons(const StandPoint& point, Measured& measured) const {
  for (std::size_t i = 0; i < products(); ++i) {
    const double plain = measured.plain_tons[i];
    if (multiplier_ == 1.0) {
      measured.tons[i] = plain;
    } else if (!standing_) {
      measured.tons[i] = plain * multiplier_;
    } else {
      measured.tons[i] = point.scaled_start[i] + multiplier_ * (plain - point.plain_start[i]);
    }
  }
}

double CaseKernel::crown_ratio(const AgeRow& row, double diameter_in) const {
  if (row.height_ft <= 0.0) return 1.0;
  const double computed = 1.0 - std::exp(row.crown_slope * diameter_in / row.height_ft);
  return std::clamp(computed + crown_offset_, 0.0, 1.0);
}

double CaseKernel::response_rate(double crown_ratio) const {
  if (!crown_limited_) return growth_.recovery_per_yr();
  return growth_.recovery_per_yr() *
         std::clamp((crown_ratio - crown_without_response) / crown_range_of_response, 0.0, 1.0);
}

double CaseKernel::stumpage_value(const Measured& measured, int age_yr) const {
  double value = other_timber_[index(age_yr)];
  for (std::size_t i = 0; i < products(); ++i) value += measured.tons[i] * final_price_[i];
  return value;
}

ExposureKernel CaseKernel::exposure(const StandPoint& point, const Measured& measured) const {
  ExposureKernel exposure;
  exposure.timber = measured.row->known;
  exposure.height_ft = measured.row->height_ft;
  exposure.slenderness = capped_slenderness(measured.row->height_ft, measured.diameter_in);
  for (int i = 0; i < point.memories; ++i) {
    const CutMemory& cut = point.memory[static_cast<std::size_t>(i)];
    const double since = point.age_yr - 1 - cut.age_yr;
    exposure.opening =
        std::max(exposure.opening, cut.opening * remaining_opening(since, recovery_yr_));
    if (since < recovery_yr_)
      exposure.slenderness = std::max(exposure.slenderness, cut.slenderness);
  }
  return exposure;
}

StormYear CaseKernel::storm(const ExposureKernel& exposure, double stumpage_value_usd_ac) const {
  StormYear year;
  for (const PerilKernel& peril : perils_) {
    const double lost = peril.annual_probability * damage_share(peril, exposure);
    year.loss_share += lost;
    year.salvage_usd_ac += lost * peril.salvage_share * stumpage_value_usd_ac;
    year.cleanup_usd_ac += lost * peril.cleanup_usd_ac;
  }
  return year;
}

StormYear CaseKernel::advance(StandPoint& point, Measured& measured) const {
  ++point.age_yr;
  measured.age_yr = -1;
  const double now = discount(point.age_yr) * point.alive;
  StormYear storm_year;
  if (hazard_active()) {
    measure_tons(point, measured);
    storm_year = storm(exposure(point, measured), stumpage_value(measured, point.age_yr));
    point.money += now * (storm_year.salvage_usd_ac - storm_year.cleanup_usd_ac +
                          storm_year.loss_share * delay_money_);
    point.land_weight += now * delay_discount_ * storm_year.loss_share;
  }
  point.money += now * yearly_money(point.age_yr, point.first_thinning_past);
  point.alive *= 1.0 - storm_year.loss_share;
  const double practice = practices_[index(point.age_yr)];
  if (practice != 0.0) point.money += discount(point.age_yr) * point.alive * practice;
  return storm_year;
}

double CaseKernel::cut_diameter_ratio(int entry) const {
  return ratios_[std::min(static_cast<std::size_t>(entry), ratios_.size() - 1)];
}

void CaseKernel::work_out_cut(const StandPoint& point, const Measured& measured,
                              double removal_fraction, Cut& cut) const {
  if (cuts_tabled()) {
    read_tabled_cut(point, measured, cut);
    return;
  }
  const double q = cut_diameter_ratio(point.entries);
  cut.removal_fraction = removal_fraction;
  cut.tpa = measured.tpa - removal_fraction * measured.tpa / (q * q);
  cut.basal_area = (1.0 - removal_fraction) * measured.basal_area;
  cut.log_tpa = std::log(cut.tpa);
  cut.log_basal_area = std::log(cut.basal_area);
  cut.log_diameter = log_diameter_of(cut.log_tpa, cut.log_basal_area);
  cut.competition = 1.0 - std::exp(cut.log_basal_area -
                                   growth_.log_unthinned_basal_area(*measured.row, cut.log_tpa));
  const StandTerms terms{point.age_yr, cut.log_tpa, cut.log_basal_area, cut.log_diameter, false};
  assortment_.tons(*measured.row, terms, cut.plain_after.data());
  price_cut(point, measured, cut);
}

void CaseKernel::read_tabled_cut(const StandPoint& point, const Measured& measured,
                                 Cut& cut) const {
  const auto found = std::find_if(tabled_cuts_.begin(), tabled_cuts_.end(),
                                  [&](const TabledCut& c) { return c.at.whole() == point.age_yr; });
  require(found != tabled_cuts_.end(), "a tabled regime is cut at the ages of its own thinnings");
  cut.tpa = found->trees_left.in(trees_per_acre);
  cut.basal_area = found->basal_area_left.in(square_feet_per_acre);
  cut.removal_fraction =
      measured.basal_area > 0.0 ? std::max(0.0, 1.0 - cut.basal_area / measured.basal_area) : 0.0;
  cut.log_tpa = std::log(cut.tpa);
  cut.log_basal_area = std::log(cut.basal_area);
  cut.log_diameter = log_diameter_of(cut.log_tpa, cut.log_basal_area);
  for (std::size_t i = 0; i < products(); ++i) {
    cut.plain_after[i] = measured.plain_tons[i] - found->tons[i].in(tons_per_acre);
  }
  price_cut(point, measured, cut);
}

double CaseKernel::basis_used_by(const StandPoint& point, const Measured& measured,
                                 const Cut& cut) const {
  if (!has_basis()) return 0.0;
  const double tons = sum_of(cut.tons, products());
  if (basis_tons_ > 0.0) {
    return std::clamp(tons * point.alive / basis_tons_, 0.0, point.basis_left);
  }
  const double stood = sum_of(measured.tons, products());
  return stood > 0.0 ? point.basis_left * std::clamp(tons / stood, 0.0, 1.0) : 0.0;
}

void CaseKernel::price_cut(const StandPoint& point, const Measured& measured, Cut& cut) const {
  double value = 0.0;
  for (std::size_t i = 0; i < products(); ++i) {
    const double plain_cut = measured.plain_tons[i] - cut.plain_after[i];
    if (multiplier_ == 1.0) {
      cut.tons[i] = plain_cut;
    } else if (!standing_ || measured.plain_tons[i] <= 0.0) {
      cut.tons[i] = plain_cut * multiplier_;
    } else {
      cut.tons[i] = measured.tons[i] * plain_cut / measured.plain_tons[i];
    }
    cut.after[i] = measured.tons[i] - cut.tons[i];
    value += cut.tons[i] * thinning_price_[i];
  }
  cut.basis_used = basis_used_by(point, measured, cut);
  cut.revenue_usd_ac =
      value * net_share_ - thinning_sale_cost_ + basis_relief(point, cut.basis_used);
}

void CaseKernel::take_cut(StandPoint& point, const Measured& measured, const Cut& cut) const {
  point.money += discount(point.age_yr) * point.alive * cut.revenue_usd_ac;
  point.basis_left -= cut.basis_used;
  require(point.memories < most_cut_memories, "a regime has at most six thinnings");
  point.memory[static_cast<std::size_t>(point.memories)] = {
      point.age_yr, opening_of_cut(cut.removal_fraction),
      capped_slenderness(measured.row->height_ft, measured.diameter_in)};
  ++point.memories;
  point.stretch_from_yr = point.age_yr;
  ++point.entries;
  point.first_thinning_past = true;
  if (cuts_tabled()) return;  // the rows that follow already show the thinned stand
  point.trees = growth_.track(cut.tpa, point.age_yr);
  point.competition = cut.competition;
  point.recovery_per_yr = response_rate(measured.crown_ratio);
  point.planted_untouched = false;
  point.plain_start = cut.plain_after;
  point.scaled_start = cut.after;
}

double CaseKernel::harvest_revenue(const StandPoint& point, const Measured& measured) const {
  return stumpage_value(measured, point.age_yr) * net_share_ - final_sale_cost_ +
         basis_relief(point, point.basis_left);
}

FinishedRegime CaseKernel::harvest(const StandPoint& point, const Measured& measured) const {
  const double now = discount(point.age_yr) * point.alive;
  return {point.money + now * (harvest_revenue(point, measured) + delay_money_),
          point.land_weight + now * delay_discount_};
}

}  // namespace staddle
