// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "staddle/hazard/damage.h"
#include "staddle/signs/risk_notes.h"

namespace staddle {
namespace {

// How long the notes look ahead after a cut, in years.
constexpr int years_told = 5;

struct PastCut {
  int age_yr = 0;
  double opening = 0.0;      // g of the cut
  double slenderness = 0.0;  // just before it; 0 where unknown
};

// The plan's years as the storms meet them.
class StormYears {
 public:
  StormYears(const StandCase& stand_case, const RegimeReport& plan)
      : hazard_(stand_case.hazard), years_(plan.years) {
    if (stand_case.standing && stand_case.standing->last_thinning) {
      const LastThinning& last = *stand_case.standing->last_thinning;
      cuts_.push_back({last.at.whole(), opening_of_cut(last.removal_fraction), 0.0});
    }
    for (const ThinningRecord& thinning : plan.thinnings) {
      if (thinning.cuts_nothing) continue;
      cuts_.push_back({thinning.at.whole(), opening_of_cut(thinning.removal_fraction),
                       slenderness_of(thinning.before)});
    }
  }

  bool has(int age_yr) const {
    return age_yr >= years_.front().at.whole() && age_yr <= years_.back().at.whole();
  }

  // The stand at the end of that year, before any cut of it.
  Exposure exposure(int age_yr) const {
    const StandMeasures& stand = year(age_yr).measures;
    Exposure exposure{true, stand.dominant_height, slenderness_of(stand), 0.0};
    for (const PastCut& cut : cuts_) {
      const double since = age_yr - 1 - cut.age_yr;
      if (since < 0.0) continue;
      exposure.opening =
          std::max(exposure.opening, cut.opening * remaining_opening(since, hazard_.recovery_yr));
      if (since < hazard_.recovery_yr) {
        exposure.slenderness = std::max(exposure.slenderness, cut.slenderness);
      }
    }
    return exposure;
  }

  // What an acre costs when this peril takes it in that year: (1-s) V + K.
  MoneyPerAcre cost_of_a_lost_acre(const Peril& peril, int age_yr) const {
    return (1.0 - peril.salvage_share) * year(age_yr).stumpage_value + peril.cleanup;
  }

  double expected_share(int age_yr) const {
    double share = 0.0;
    for (const Peril& peril : hazard_.perils) {
      share += peril.annual_probability * damage_share(peril, exposure(age_yr));
    }
    return share;
  }

  MoneyPerAcre expected_loss(int age_yr) const {
    MoneyPerAcre loss;
    for (const Peril& peril : hazard_.perils) {
      loss += peril.annual_probability * damage_share(peril, exposure(age_yr)) *
              cost_of_a_lost_acre(peril, age_yr);
    }
    return loss;
  }

 private:
  static double slenderness_of(const StandMeasures& stand) {
    return capped_slenderness(stand.dominant_height.in(feet),
                              stand.quadratic_mean_diameter.in(inches));
  }

  const YearRecord& year(int age_yr) const {
    return years_[static_cast<std::size_t>(age_yr - years_.front().at.whole())];
  }

  const Hazard& hazard_;
  const std::vector<YearRecord>& years_;
  std::vector<PastCut> cuts_;
};

Exposure odds_term_off(Exposure exposure) {
  exposure.opening = 0.0;
  return exposure;
}

StormAfterThinning tell(const StandCase& stand_case, const StormYears& storms, int cut_yr,
                        int next_entry_yr) {
  StormAfterThinning told;
  told.at = age(cut_yr);
  told.loss_share_before = storms.expected_share(cut_yr);
  told.yearly_loss_before = storms.expected_loss(cut_yr);
  const int first_yr = cut_yr + 1;
  told.loss_share_after = storms.expected_share(first_yr);
  told.yearly_loss_after = storms.expected_loss(first_yr);
  for (const Peril& peril : stand_case.hazard.perils) {
    const Exposure after = storms.exposure(first_yr);
    told.perils.push_back({peril.name, peril.annual_probability, damage_share(peril, after),
                           damage_share(peril, odds_term_off(after))});
  }
  for (int at = first_yr; at <= cut_yr + years_told && storms.has(at); ++at) {
    const Exposure exposure = storms.exposure(at);
    const double v = stand_case.costs.rate.discount_factor(years(at - cut_yr));
    for (const Peril& peril : stand_case.hazard.perils) {
      const MoneyPerAcre cost = storms.cost_of_a_lost_acre(peril, at);
      const double share = damage_share(peril, exposure);
      if (at <= next_entry_yr) {
        told.extra_expected_loss += v * peril.annual_probability *
                                    (share - damage_share(peril, odds_term_off(exposure))) * cost;
      }
      if (peril.annual_probability > 0.0 && share * cost > told.worst_event) {
        told.worst_event = share * cost;
        told.worst_peril = peril.name;
        told.worst_at = age(at);
      }
    }
  }
  return told;
}

}  // namespace

std::vector<StormAfterThinning> storms_after_thinnings(const StandCase& stand_case,
                                                       const RegimeReport& plan) {
  std::vector<StormAfterThinning> result;
  if (!stand_case.hazard.active()) return result;
  const StormYears storms(stand_case, plan);
  const Regime regime = plan.regime();
  for (std::size_t i = 0; i < regime.thinnings.size(); ++i) {
    const Age next = i + 1 < regime.thinnings.size() ? regime.thinnings[i + 1].at
                                                     : regime.final_harvest;
    result.push_back(tell(stand_case, storms, regime.thinnings[i].at.whole(), next.whole()));
  }
  return result;
}

}  // namespace staddle
