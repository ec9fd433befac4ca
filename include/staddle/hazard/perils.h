// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "staddle/units/units.h"

namespace staddle {

enum class Species { loblolly, slash, longleaf };

// The share of the acres that a peril destroys, on the log-odds scale:
//   logit D = logit base + height_slope (H - reference)/10
//           + slenderness_slope max(0, S - 80)/10 + ln(odds_ratio) (g r) h(H) + species
// times clamp((H - 20)/10, 0, 1), so that seedlings are not lost to it.
struct LogisticShare {
  double base_damage_share = 0.0;       // (0, 1)
  Height reference_height;
  double height_slope_per_10ft = 0.0;
  double slenderness_slope_per_10 = 0.0;
  double thinning_odds_ratio = 1.0;     // half removed, in the first year after
  bool wind = true;                     // h grows with height; ice: 1
  double species_log_odds = 0.0;
};

// One cause of loss. Within a year the perils of a hazard exclude each other.
struct Peril {
  std::string name;
  double annual_probability = 0.0;
  std::optional<LogisticShare> logistic;  // absent: the constant share below
  double constant_share = 0.0;            // (0, 1]
  double salvage_share = 0.0;             // of the stumpage value of what is lost
  MoneyPerAcre cleanup;                   // per acre lost
  bool hurricane = false;                 // counts toward the zone's hurricane chance
};

// What storms may do to the stand. No perils: the hazard is off.
struct Hazard {
  std::string zone = "none";      // the id it came from; "own" for own perils
  Species species = Species::loblolly;
  double recovery_yr = 5.0;       // years until an opened stand is as firm as before
  std::vector<Peril> perils;

  bool active() const { return !perils.empty(); }
};

// The same hazard with every peril's thinning odds ratio set to `odds_ratio`.
Hazard with_odds_ratio(Hazard hazard, double odds_ratio);

}  // namespace staddle
