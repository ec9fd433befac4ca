// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "staddle/finance/tax.h"
#include "staddle/growth/equation_set.h"
#include "staddle/growth/yield_table.h"
#include "staddle/hazard/perils.h"
#include "staddle/optimise/decision_lattice.h"
#include "staddle/products/assortment.h"
#include "staddle/plant/establishment.h"
#include "staddle/products/price_list.h"
#include "staddle/regime/costs.h"
#include "staddle/regime/regime.h"
#include "staddle/regime/stand_case.h"
#include "staddle/signs/readiness.h"
#include "staddle/signs/site.h"
#include "staddle/vary/vary_question.h"

// A scenario file as a value: read, checked, every default filled in and noted.
namespace staddle {

// A value that the file did not give and that was used all the same.
struct Assumption {
  std::string pointer;     // "/decisions/max_thinnings"; empty where no key holds it
  std::string value_json;  // the value as JSON text: "2", "[12,35]", "\"replant\""
  std::string why;         // "default", or a sentence
};

// What the stand's growth comes from.
using GrowthSource = std::variant<EquationSet, YieldTable, std::vector<TabledRegime>>;

// A stand that was measured on plots: how sure its basal area is.
struct PlotSample {
  std::string file;
  std::size_t plots = 0;
  MeasuredStand measured;                  // in the year of the plots
  // 90 percent interval of basal area; absent where a single plot shows no variation.
  std::optional<BasalArea> low, high;
  std::optional<double> crown_cover;       // crown areas over ground, where measured
};

struct StandBlock {
  GrowthSource source;
  std::optional<Height> site_index;        // equations only; given, or solved from height
  std::optional<Height> dominant_height;   // as given
  std::optional<TreeDensity> planted;      // equations only
  std::optional<MeasuredStand> standing;   // at the present year
  std::optional<PlotSample> plots;         // where the measures come from plots
  std::optional<CalendarYear> measured_in; // when the measures are older than the present
};

// What happens to the land after a standing stand's final harvest.
struct AfterHarvest {
  enum class Kind { replant, best, land_price } kind = Kind::replant;
  MoneyPerAcre land_price;  // with land_price
};

struct Scenario {
  std::string file;  // as the user named it, for messages
  std::string title, purpose, owner, prepared_by;
  Area area;
  std::optional<CalendarYear> present_year;
  StandBlock stand;
  std::vector<ProductLimit> products;   // equations: the limits; tables: names alone matter
  PriceList prices;                     // in the order of the products
  bool thinning_price_given = false;    // a factor or a discount stands in the file
  Costs costs;
  AfterHarvest after_harvest;
  DecisionLattice lattice;
  ThinningResponse thinning_response = ThinningResponse::crown_limited;
  std::vector<double> cut_diameter_ratios;
  Hazard hazard;
  std::optional<TaxRules> tax;          // absent: money is told before tax alone
  SiteFacts site;
  ReadyLimits ready_limits;
  std::vector<StatedRegime> regimes;
  std::optional<VaryQuestion> vary;     // what the command vary is to vary
  std::optional<Establishment> establishment;  // ways to start the next stand
  std::vector<Assumption> assumed;
  std::vector<std::string> questions;   // values that are allowed and seldom meant

  bool is_standing() const { return stand.standing.has_value(); }
};

}  // namespace staddle
