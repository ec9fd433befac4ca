// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>

#include "io/model_readers.h"
#include "io/option_check.h"
#include "io/place.h"

namespace staddle {
namespace {

template <std::size_t Count>
std::array<double, Count> numbers(const Place& list) {
  std::array<double, Count> values{};
  for (std::size_t i = 0; i < Count; ++i) values[i] = list.item(i).number_or_zero();
  return values;
}

FittedRange fitted_range(const Place& place, FaultList& faults) {
  const FittedRange range{place.item(0).number_or_zero(), place.item(1).number_or_zero()};
  if (range.low > range.high) {
    faults.add(place.order(), FaultCode::contradiction, place.pointer(),
               "the range ends below its beginning");
  }
  return range;
}

WorkedValue worked_value(const Place& row) {
  WorkedValue value{};
  value.site_index_ft = row["site_index_ft"].number_or_zero();
  value.planted_tpa = row["planted_tpa"].number_or_zero();
  value.age_yr = row["age_yr"].number_or_zero();
  value.tpa = row["tpa"].number_or_zero();
  value.dominant_height_ft = row["dominant_height_ft"].number_or_zero();
  value.basal_area_ft2_ac = row["basal_area_ft2_ac"].number_or_zero();
  value.qmd_in = row["qmd_in"].number_or_zero();
  for (const Place& tons : row["product_tons_ac"].items()) {
    value.product_tons_ac.push_back(tons.number_or_zero());
  }
  value.total_tons_ac = row["total_tons_ac"].number_or_zero();
  return value;
}

void read_coefficients(const Place& root, EquationSet& set) {
  const Place height = root["dominant_height"];
  set.height_rate = height["rate"].number_or_zero();
  set.height_shape = height["shape"].number_or_zero();
  set.site_base_age_yr = height["base_age_yr"].number_or_zero();
  const Place survival = root["survival"];
  set.survival_floor_tpa = survival["floor_tpa"].number_or_zero();
  set.survival_exponent = survival["exponent"].number_or_zero();
  set.survival_rate = survival["rate"].number_or_zero();
  set.survival_age_power = survival["age_power"].number_or_zero();
  set.basal_area = numbers<6>(root["basal_area"]["coefficients"]);
  set.total_weight_form = root["total_weight"]["form"].text_or_empty() == "trees-height-basal-area"
                              ? TotalWeightForm::trees_height_basal_area
                              : TotalWeightForm::height_basal_area;
  set.total_weight = numbers<6>(root["total_weight"]["coefficients"]);
  set.merchantable = numbers<5>(root["merchantable"]["coefficients"]);
  set.recovery_per_yr = root["thinned_stand"]["recovery_per_yr"].number_or_zero();
  set.hardwood_per_percent = root["hardwood"]["per_percent"].number();
}

}  // namespace

Result<EquationSet> read_equation_set(const std::string& text, const std::string& file) {
  FaultList faults(file);
  auto tree = json::parse(text, faults);
  if (!tree) return faults.in_file_order();
  check_values(*tree, equation_set_options(), faults);
  const Place root(&*tree, "");
  EquationSet set;
  set.id = root["id"].text_or_empty();
  set.species = root["species"].text_or_empty();
  set.region = root["region"].text_or_empty();
  set.source = root["source"].text_or_empty();
  for (const Place& note : root["notes"].items()) set.notes.push_back(note.text_or_empty());
  read_coefficients(root, set);
  const Place fitted = root["fitted_range"];
  set.fitted_age_yr = fitted_range(fitted["age_yr"], faults);
  set.fitted_tpa = fitted_range(fitted["tpa"], faults);
  set.fitted_site_index_ft = fitted_range(fitted["site_index_ft"], faults);
  for (const Place& row : root["worked_values"]["rows"].items()) {
    set.worked_values.push_back(worked_value(row));
  }
  if (!faults.empty()) return faults.in_file_order();
  return set;
}

}  // namespace staddle
