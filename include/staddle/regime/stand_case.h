// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "staddle/growth/growth_model.h"
#include "staddle/hazard/perils.h"
#include "staddle/products/assortment.h"
#include "staddle/products/price_list.h"
#include "staddle/regime/costs.h"

namespace staddle {

// How fast the competition index of a thinned stand recovers after a cut.
enum class ThinningResponse {
  // At the rate k times clamp((CR - 0.20)/0.20, 0, 1), CR the live crown ratio just
  // before the cut. Assumption: without the limit the equations reward waiting and
  // cutting half, against trials (Sharma et al. 2006, Ann. For. Sci. 63:349).
  crown_limited,
  // At the published rate k, whatever the crowns.
  as_published,
};

// A thinning that was done before the stand was measured.
struct LastThinning {
  Age at;
  double removal_fraction = 0.0;
};

// A standing stand as it was measured, at the present.
struct MeasuredStand {
  Age at;
  TreeDensity trees;
  BasalArea basal_area;
  std::optional<double> live_crown_ratio;
  std::optional<LastThinning> last_thinning;
  std::vector<OtherTimber> other_timber;
};

// A cut that a table of one fixed regime brings with it.
struct TabledCut {
  Age at;
  std::vector<Yield> tons;        // by product, cut
  TreeDensity trees_left;
  BasalArea basal_area_left;
};

// What the tax basis of the timber saves its owner as the timber is cut, per acre of the
// original stand (regime/after_tax.h). It is nominal, so inflation shrinks it.
struct TimberBasis {
  MoneyPerAcre saves;      // the whole of it, were it used up at the present
  double inflation = 0.0;  // per year
  // A cut uses the share of the basis that its tons are of these, the final harvest what
  // is left. Zero: a cut uses the share of what is left that it takes of the tons standing.
  Yield tons;
};

// All that is needed to price any regime of one stand on one acre.
struct StandCase {
  GrowthModel growth;
  Assortment assortment;
  PriceList prices;  // in the order of the assortment
  Costs costs;
  Hazard hazard;
  std::optional<MeasuredStand> standing;  // absent: bare land, planted now
  ThinningResponse thinning_response = ThinningResponse::crown_limited;
  // Mean diameter of the cut trees over the stand's, by entry; the last repeats.
  std::vector<double> cut_diameter_ratios = {0.95};
  // Bare land: all tons times this. Standing: every product's change of tons between
  // entries times this, and a cut takes the same share of each product as without.
  double growth_multiplier = 1.0;
  // With a growth model from a tabled regime: its cuts, which no choice can change.
  std::vector<TabledCut> tabled_cuts = {};
  // Standing only: what an acre is worth once it is bare again.
  MoneyPerAcre land_value;
  // Only in a case after tax: relief that comes with each cut. The acres that storms take
  // leave their part of it to the next cut.
  std::optional<TimberBasis> basis = std::nullopt;

  Age present() const { return standing ? standing->at : age(0); }
};

}  // namespace staddle
