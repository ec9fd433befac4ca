// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "staddle/units/age.h"
#include "staddle/units/units.h"

namespace staddle {

// A dense stand may be opened further, but only now: a cut in the present year of a
// measured stand that carries this much already.
struct DenseStandNow {
  BasalArea basal_area;
  double max_removal_fraction = 0.5;
};

// Limits that keep a plan inside what the trade holds prudent (common practice, no
// source). The equations do not know the risks they guard against.
struct Guards {
  std::optional<double> max_removal_fraction;
  std::optional<DenseStandNow> dense_stand_now;
  std::optional<BasalArea> min_residual_basal_area;
  std::optional<Height> min_height;
  std::optional<Diameter> min_qmd;
  std::optional<double> min_live_crown_ratio;
};

// The guards of the file format's defaults: a third at most, half of a stand of 140
// ft2/ac now, 60 ft2/ac left, 40 ft, 6 in, crowns of 30 percent.
Guards default_guards();

// The choices among which the best is sought: whole years, listed removals.
struct DecisionLattice {
  int max_thinnings = 2;
  Age thinning_from = age(12), thinning_to = age(35);
  std::vector<double> removal_fractions;  // rising, of basal area
  int years_between_entries = 5;
  Age final_from = age(20), final_to = age(45);
  Yield min_removal;                  // tons per acre of all products
  Weight min_sale;                    // tons per thinning sale
  BasalArea min_residual_basal_area;  // hard limit besides the guard
  Guards guards;
};

}  // namespace staddle
