// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/loblolly_equations.h"

namespace staddle::support {
namespace {

EquationSet both_regions() {
  EquationSet set;
  set.species = "loblolly pine";
  set.source = "Harrison & Borders 1996, technical report 1996-1, University of Georgia";
  set.height_rate = 0.014452;
  set.height_shape = 0.8216;
  set.survival_floor_tpa = 100.0;
  set.survival_exponent = 0.745339;
  set.survival_rate = 0.0003425;
  set.survival_age_power = 1.97472;
  return set;
}

}  // namespace

EquationSet coastal_loblolly() {
  EquationSet set = both_regions();
  set.id = "coastal";
  set.basal_area = {0.0, -42.689283, 0.367244, 0.659985, 2.012724, 7.703502};
  set.total_weight_form = TotalWeightForm::trees_height_basal_area;
  set.total_weight = {-5.175922, 0.198424, 1.232028, 0.705769, -5.129853, 6.731477};
  set.merchantable = {-1.064132, 3.818683, -5.048319, -0.422117, 5.991728};
  set.recovery_per_yr = 0.110521;
  return set;
}

EquationSet upland_loblolly() {
  EquationSet set = both_regions();
  set.id = "upland";
  set.basal_area = {-0.855557, -36.050347, 0.299071, 0.980246, 3.309212, 3.787258};
  set.total_weight_form = TotalWeightForm::height_basal_area;
  set.total_weight = {-3.818016, 0.430179, 1.276768, -8.088792, 7.428472, 5.554509};
  set.merchantable = {-1.007482, 3.931373, -0.518057, -0.048385, 5.660573};
  set.recovery_per_yr = 0.076472;
  set.hardwood_per_percent = -0.003689;
  return set;
}

}  // namespace staddle::support
