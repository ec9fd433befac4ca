// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "staddle/stand/stand_measures.h"

namespace staddle {

// The closed list of forms of the total-weight equation. A model file names one.
enum class TotalWeightForm {
  // ln Y = y0 + y1 ln N + y2 ln H + y3 ln B + y4 ln N / A + y5 ln B / A
  trees_height_basal_area,
  // ln Y = y0 + y1 ln H + y2 ln B + y3 ln N / A + y4 ln H / A + y5 ln B / A
  height_basal_area,
};

// A closed interval within which the equations were fitted.
struct FittedRange {
  double low = 0.0;
  double high = 0.0;
};

// A published value that the equations must reproduce, kept with its model.
struct WorkedValue {
  double site_index_ft, planted_tpa, age_yr;
  double tpa, dominant_height_ft, basal_area_ft2_ac, qmd_in;
  std::vector<double> product_tons_ac;  // default products, largest first
  double total_tons_ac;
};

// One published set of stand-level growth and yield equations: data, read from
// models/equations. The coefficients are plain numbers in the units of the source:
// ages in years, heights in feet, trees and square feet per acre, green tons.
struct EquationSet {
  std::string id;
  std::string species;
  std::string region;
  std::string source;
  std::vector<std::string> notes;  // what the reader of a result has to know

  // H(A) = SI ((1 - exp(-rate A)) / (1 - exp(-rate base_age)))^shape
  double height_rate = 0.0, height_shape = 0.0, site_base_age_yr = 25.0;

  // N2 = floor + ((N1 - floor)^-e + rate^2 SI (A2^p - A1^p))^(-1/e) above the floor;
  // at or below it the number of trees is held.
  double survival_floor_tpa = 0.0, survival_exponent = 0.0, survival_rate = 0.0,
         survival_age_power = 0.0;

  // ln Bu = b0 + b1 / A + b2 ln N + b3 ln H + b4 ln N / A + b5 ln H / A
  std::array<double, 6> basal_area{};

  TotalWeightForm total_weight_form = TotalWeightForm::trees_height_basal_area;
  std::array<double, 6> total_weight{};

  // Ym = Y exp(m1 (t / Dq)^m2 + m3 N^m4 (d / Dq)^m5)
  std::array<double, 5> merchantable{};

  // Competition of a thinned stand decays by exp(-k years).
  double recovery_per_yr = 0.0;

  // ln B changes by this for every percent of hardwood basal area over that of the pine;
  // absent where the source prints no such response.
  std::optional<double> hardwood_per_percent;

  FittedRange fitted_age_yr, fitted_tpa, fitted_site_index_ft;
  std::vector<WorkedValue> worked_values;
};

// Dominant height of this site at this age.
Height dominant_height(const EquationSet& equations, Height site_index, Age at);

// The site index whose curve passes through this height at this age (the height
// equation solved for it). REQUIRES: at > 0.
Height site_index_from_height(const EquationSet& equations, Height dominant, Age at);

}  // namespace staddle
