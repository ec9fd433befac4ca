// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <vector>

#include "growth/growth_kernel.h"
#include "hazard/damage_kernel.h"
#include "products/assortment_kernel.h"
#include "staddle/regime/stand_case.h"

namespace staddle {

// What a hazard remembers of one cut.
struct CutMemory {
  int age_yr = 0;
  double opening = 0;      // g of the cut
  double slenderness = 0;  // just before it; 0 where unknown
};

// A thinning of a format's most (6), and the one done before the stand was measured.
inline constexpr int most_cut_memories = 7;

// The crown-limited response to a thinning: none where the live crown ratio before it is
// no more than the first, all of it from the second above that. Assumption of the project.
inline constexpr double crown_without_response = 0.20, crown_range_of_response = 0.20;

using ProductTons = std::array<double, max_products>;

// One acre in the middle of a regime, at the end of year `age_yr`. Small and copyable:
// a search copies it at every cut and so shares the years before.
struct StandPoint {
  int age_yr = 0;

  // The stretch since the last cut.
  TreeTrack trees;
  int stretch_from_yr = 0;
  double competition = 0;  // CI at the start of the stretch
  double recovery_per_yr = 0;
  bool planted_untouched = true;
  int entries = 0;
  bool first_thinning_past = false;  // flows that end with the first thinning have ended

  std::array<CutMemory, most_cut_memories> memory{};
  int memories = 0;

  // Expected, discounted to the present.
  double money = 0;        // alpha so far
  double land_weight = 0;  // beta so far
  double alive = 1;        // share of the acre that storms have left
  double basis_left = 1;   // share of a tax basis that no cut has used

  // With a growth multiplier on a standing stand: tons at the start of the stretch,
  // as without the multiplier and with it.
  ProductTons plain_start{};
  ProductTons scaled_start{};
};

// The stand of a point, measured; the tons only where `tons_known`.
struct Measured {
  int age_yr = -1;  // of what follows; -1: nothing measured yet
  bool tons_known = false;
  const AgeRow* row = nullptr;
  bool timber = false;
  double tpa = 0, log_tpa = 0;
  double basal_area = 0, log_basal_area = 0;
  double log_unthinned = 0;
  double diameter_in = 0, log_diameter = 0;
  double crown_ratio = 1;
  ProductTons plain_tons{};  // as the equations or the table say
  ProductTons tons{};        // after the growth multiplier
};

// A cut worked out but not yet taken.
struct Cut {
  double removal_fraction = 0;
  double tpa = 0, basal_area = 0, log_tpa = 0, log_basal_area = 0, log_diameter = 0;
  double competition = 0;
  ProductTons plain_after{};
  ProductTons after{};
  ProductTons tons{};         // cut, signed
  double basis_used = 0;      // share of the whole
  double revenue_usd_ac = 0;  // net, with the basis used, per acre standing
};

// alpha and beta of a regime that has run to its end.
struct FinishedRegime {
  double money = 0;
  double land_weight = 0;
};

struct StormYear {
  double loss_share = 0;      // of the acres that entered the year
  double salvage_usd_ac = 0;  // per acre that entered
  double cleanup_usd_ac = 0;
};

// A stand case turned into tables by age, and the arithmetic of one year, one cut and
// one harvest: the only place where these are written.
class CaseKernel {
 public:
  explicit CaseKernel(const StandCase& stand_case);

  int present_yr() const { return present_yr_; }
  int last_age_yr() const { return growth_.last_age(); }
  std::size_t products() const { return assortment_.size(); }
  // The cuts come from a table of one fixed regime.
  bool cuts_tabled() const { return growth_.cuts_tabled(); }
  bool hazard_active() const { return !perils_.empty(); }
  bool standing() const { return standing_; }
  const GrowthKernel& growth() const { return growth_; }
  const AssortmentKernel& assortment() const { return assortment_; }

  StandPoint start() const;

  // The stand as it is at the point's age, before any cut. What is already measured of
  // this year is kept, so a Measured belongs to one stretch of one regime.
  void measure(const StandPoint& point, Measured& measured) const;
  void measure_tons(const StandPoint& point, Measured& measured) const;

  // One year on: growth, storm, annual money, practices. With a hazard the stand is
  // measured on the way; without one `measured` is only marked as out of date.
  StormYear advance(StandPoint& point, Measured& measured) const;

  double cut_diameter_ratio(int entry) const;
  // REQUIRES: tons measured; a removal that leaves trees and basal area.
  void work_out_cut(const StandPoint& point, const Measured& measured, double removal_fraction,
                    Cut& cut) const;
  void take_cut(StandPoint& point, const Measured& measured, const Cut& cut) const;

  bool has_basis() const { return !basis_saves_.empty(); }
  // What using up this share of the tax basis now saves, per acre standing.
  double basis_relief(const StandPoint& point, double share) const {
    if (basis_saves_.empty() || point.alive <= 0.0) return 0.0;
    return basis_saves_[index(point.age_yr)] * share / point.alive;
  }

  // Net revenue of the final harvest, with the basis left, per acre standing.
  double harvest_revenue(const StandPoint& point, const Measured& measured) const;
  // Money and land weight once the stand is harvested and the land waits to be planted.
  FinishedRegime harvest(const StandPoint& point, const Measured& measured) const;

  // The objective of a finished regime: bare land alpha/(1-beta), standing
  // alpha + beta x land value.
  double objective(const FinishedRegime& regime) const {
    return standing_ ? regime.money + regime.land_weight * land_value_
                     : regime.money / (1.0 - regime.land_weight);
  }

  double stumpage_value(const Measured& measured, int age_yr) const;
  double discount(int age_yr) const { return discount_[index(age_yr)]; }
  double land_discount(int age_yr) const { return discount_[index(age_yr)] * delay_discount_; }
  // Money of the years of waiting after the land turned bare, at that moment.
  double delay_money() const { return delay_money_; }
  double annual_net() const { return annual_net_; }
  double net_share() const { return net_share_; }
  double final_price(std::size_t product) const { return final_price_[product]; }
  double thinning_price(std::size_t product) const { return thinning_price_[product]; }
  double thinning_sale_cost() const { return thinning_sale_cost_; }
  double final_sale_cost() const { return final_sale_cost_; }
  double other_timber_value(int age_yr) const { return other_timber_[index(age_yr)]; }
  // Annual and dated money of one year, practices of one age: per acre.
  double yearly_money(int age_yr, bool first_thinning_past) const {
    return first_thinning_past ? yearly_after_[index(age_yr)] : yearly_before_[index(age_yr)];
  }
  // The part of yearly_money that is paid, positive; the rest is earned.
  double yearly_cost(int age_yr, bool first_thinning_past) const {
    return first_thinning_past ? cost_after_[index(age_yr)] : cost_before_[index(age_yr)];
  }
  double practice_money(int age_yr) const { return practices_[index(age_yr)]; }
  const std::vector<PerilKernel>& perils() const { return perils_; }
  double recovery_yr() const { return recovery_yr_; }
  double land_value() const { return land_value_; }
  double growth_multiplier() const { return multiplier_; }
  bool crown_limited() const { return crown_limited_; }
  // Measured less computed live crown ratio at the present.
  double crown_offset() const { return crown_offset_; }
  ExposureKernel exposure(const StandPoint& point, const Measured& measured) const;
  StormYear storm(const ExposureKernel& exposure, double stumpage_value_usd_ac) const;

  // Live crown ratio with the measured offset, clamped to 0..1.
  double crown_ratio(const AgeRow& row, double diameter_in) const;
  double response_rate(double crown_ratio) const;

 private:
  std::size_t index(int age_yr) const { return static_cast<std::size_t>(age_yr - present_yr_); }
  void make_money_tables(const StandCase& stand_case);
  void scale_tons(const StandPoint& point, Measured& measured) const;
  void read_tabled_cut(const StandPoint& point, const Measured& measured, Cut& cut) const;
  void price_cut(const StandPoint& point, const Measured& measured, Cut& cut) const;
  double basis_used_by(const StandPoint& point, const Measured& measured, const Cut& cut) const;

  GrowthModel growth_model_;  // keeps the kernels below alive
  Assortment assortment_model_;
  const GrowthKernel& growth_;
  const AssortmentKernel& assortment_;
  bool standing_ = false;
  int present_yr_ = 0;
  bool crown_limited_ = true;
  double crown_offset_ = 0;
  double multiplier_ = 1;
  double land_value_ = 0;
  std::vector<double> ratios_;
  std::vector<TabledCut> tabled_cuts_;
  StandPoint start_;

  std::vector<double> discount_, yearly_before_, yearly_after_, practices_, other_timber_;
  std::vector<double> cost_before_, cost_after_;
  double delay_discount_ = 1, delay_money_ = 0, annual_net_ = 0, net_share_ = 1;
  double thinning_sale_cost_ = 0, final_sale_cost_ = 0;
  ProductTons final_price_{}, thinning_price_{};
  std::vector<double> basis_saves_;  // by age; empty without a basis
  double basis_tons_ = 0;            // 0: by the share of what stands

  std::vector<PerilKernel> perils_;
  double recovery_yr_ = 5;
};

}  // namespace staddle
