// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>

#include "io/model_readers.h"
#include "io/option_check.h"
#include "io/place.h"

namespace staddle {
namespace {

constexpr ValueKinds number = kinds::number;
constexpr ValueKinds text = kinds::text;

// One form of equation is known for most parts; a new one is new code, and a name here.
constexpr Option options[] = {
    {.pointer = "/license", .meaning = "license of the file", .allowed = text, .required = true},
    {.pointer = "/format", .meaning = "format of the file", .allowed = text,
     .choices = "staddle-equations/1", .required = true},
    {.pointer = "/id", .meaning = "the id that scenarios name", .allowed = text,
     .required = true},
    {.pointer = "/species", .meaning = "species", .allowed = text, .required = true},
    {.pointer = "/region", .meaning = "region", .allowed = text, .required = true},
    {.pointer = "/source", .meaning = "publication", .allowed = text, .required = true},
    {.pointer = "/notes", .meaning = "what a user has to know", .allowed = kinds::list,
     .required = true},
    {.pointer = "/notes/#", .meaning = "a sentence", .allowed = text},

    {.pointer = "/dominant_height", .meaning = "dominant height", .allowed = kinds::object,
     .required = true},
    {.pointer = "/dominant_height/form", .meaning = "form", .allowed = text,
     .choices = "site-index-exponential", .required = true},
    {.pointer = "/dominant_height/equation", .meaning = "the form written out", .allowed = text,
     .required = true},
    {.pointer = "/dominant_height/rate", .meaning = "rate", .unit = "1/yr", .allowed = number,
     .range = between(0, 1), .required = true},
    {.pointer = "/dominant_height/shape", .meaning = "exponent", .allowed = number,
     .range = above_to(0, 10), .required = true},
    {.pointer = "/dominant_height/base_age_yr", .meaning = "base age of the site index",
     .unit = "years", .allowed = number, .range = from_to(1, 150), .required = true},

    {.pointer = "/survival", .meaning = "survival", .allowed = kinds::object, .required = true},
    {.pointer = "/survival/form", .meaning = "form", .allowed = text, .choices = "floor-power",
     .required = true},
    {.pointer = "/survival/equation", .meaning = "the form written out", .allowed = text,
     .required = true},
    {.pointer = "/survival/floor_tpa", .meaning = "trees below which none die",
     .unit = "trees/ac", .allowed = number, .range = from_to(0, 4000), .required = true},
    {.pointer = "/survival/exponent", .meaning = "exponent", .allowed = number,
     .range = above_to(0, 10), .required = true},
    {.pointer = "/survival/rate", .meaning = "rate", .allowed = number,
     .range = from_to(0, 1), .required = true},
    {.pointer = "/survival/age_power", .meaning = "exponent of age", .allowed = number,
     .range = above_to(0, 10), .required = true},

    {.pointer = "/basal_area", .meaning = "unthinned basal area", .allowed = kinds::object,
     .required = true},
    {.pointer = "/basal_area/form", .meaning = "form", .allowed = text,
     .choices = "age-trees-height", .required = true},
    {.pointer = "/basal_area/equation", .meaning = "the form written out", .allowed = text,
     .required = true},
    {.pointer = "/basal_area/coefficients", .meaning = "b0 to b5", .allowed = kinds::list,
     .least_items = 6, .most_items = 6, .required = true},
    {.pointer = "/basal_area/coefficients/#", .meaning = "coefficient", .allowed = number,
     .range = from_to(-1000, 1000)},

    {.pointer = "/total_weight", .meaning = "total green weight", .allowed = kinds::object,
     .required = true},
    {.pointer = "/total_weight/form", .meaning = "form", .allowed = text,
     .choices = "trees-height-basal-area|height-basal-area", .required = true},
    {.pointer = "/total_weight/equation", .meaning = "the form written out", .allowed = text,
     .required = true},
    {.pointer = "/total_weight/coefficients", .meaning = "y0 to y5", .allowed = kinds::list,
     .least_items = 6, .most_items = 6, .required = true},
    {.pointer = "/total_weight/coefficients/#", .meaning = "coefficient", .allowed = number,
     .range = from_to(-1000, 1000)},

    {.pointer = "/merchantable", .meaning = "merchantable part", .allowed = kinds::object,
     .required = true},
    {.pointer = "/merchantable/form", .meaning = "form", .allowed = text,
     .choices = "top-and-diameter-ratio", .required = true},
    {.pointer = "/merchantable/equation", .meaning = "the form written out", .allowed = text,
     .required = true},
    {.pointer = "/merchantable/coefficients", .meaning = "m1 to m5", .allowed = kinds::list,
     .least_items = 5, .most_items = 5, .required = true},
    {.pointer = "/merchantable/coefficients/#", .meaning = "coefficient", .allowed = number,
     .range = from_to(-1000, 1000)},

    {.pointer = "/thinned_stand", .meaning = "recovery after thinning", .allowed = kinds::object,
     .required = true},
    {.pointer = "/thinned_stand/form", .meaning = "form", .allowed = text,
     .choices = "competition-index", .required = true},
    {.pointer = "/thinned_stand/equation", .meaning = "the form written out", .allowed = text,
     .required = true},
    {.pointer = "/thinned_stand/recovery_per_yr", .meaning = "decay of the competition index",
     .unit = "1/yr", .allowed = number, .range = from_to(0, 1), .required = true},

    {.pointer = "/fitted_range", .meaning = "what the source was fitted on",
     .allowed = kinds::object, .required = true},
    {.pointer = "/fitted_range/age_yr", .meaning = "ages", .allowed = kinds::list,
     .least_items = 2, .most_items = 2, .required = true},
    {.pointer = "/fitted_range/age_yr/#", .meaning = "age", .unit = "years", .allowed = number,
     .range = from_to(0, 150)},
    {.pointer = "/fitted_range/tpa", .meaning = "trees", .allowed = kinds::list,
     .least_items = 2, .most_items = 2, .required = true},
    {.pointer = "/fitted_range/tpa/#", .meaning = "trees", .unit = "trees/ac",
     .allowed = number, .range = from_to(0, 4000)},
    {.pointer = "/fitted_range/site_index_ft", .meaning = "sites", .allowed = kinds::list,
     .least_items = 2, .most_items = 2, .required = true},
    {.pointer = "/fitted_range/site_index_ft/#", .meaning = "site index", .unit = "ft",
     .allowed = number, .range = from_to(0, 200)},

    {.pointer = "/worked_values", .meaning = "values the equations must reproduce",
     .allowed = kinds::object, .required = true},
    {.pointer = "/worked_values/origin", .meaning = "where they come from", .allowed = text,
     .required = true},
    {.pointer = "/worked_values/rows", .meaning = "one stand each", .allowed = kinds::list,
     .required = true},
    {.pointer = "/worked_values/rows/#", .meaning = "a stand", .allowed = kinds::object},
    {.pointer = "/worked_values/rows/#/site_index_ft", .meaning = "site index",
     .allowed = number, .required = true},
    {.pointer = "/worked_values/rows/#/planted_tpa", .meaning = "planted", .allowed = number,
     .required = true},
    {.pointer = "/worked_values/rows/#/age_yr", .meaning = "age", .allowed = number,
     .required = true},
    {.pointer = "/worked_values/rows/#/tpa", .meaning = "trees", .allowed = number,
     .required = true},
    {.pointer = "/worked_values/rows/#/dominant_height_ft", .meaning = "height",
     .allowed = number, .required = true},
    {.pointer = "/worked_values/rows/#/basal_area_ft2_ac", .meaning = "basal area",
     .allowed = number, .required = true},
    {.pointer = "/worked_values/rows/#/qmd_in", .meaning = "diameter", .allowed = number,
     .required = true},
    {.pointer = "/worked_values/rows/#/product_tons_ac",
     .meaning = "tons of the default products, largest first", .allowed = kinds::list,
     .least_items = 3, .most_items = 3, .required = true},
    {.pointer = "/worked_values/rows/#/product_tons_ac/#", .meaning = "tons",
     .allowed = number},
    {.pointer = "/worked_values/rows/#/total_tons_ac", .meaning = "tons", .allowed = number,
     .required = true},
};

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
  set.total_weight_form =
      root["total_weight"]["form"].text_or_empty() == "trees-height-basal-area"
          ? TotalWeightForm::trees_height_basal_area
          : TotalWeightForm::height_basal_area;
  set.total_weight = numbers<6>(root["total_weight"]["coefficients"]);
  set.merchantable = numbers<5>(root["merchantable"]["coefficients"]);
  set.recovery_per_yr = root["thinned_stand"]["recovery_per_yr"].number_or_zero();
}

}  // namespace

Result<EquationSet> read_equation_set(const std::string& text, const std::string& file) {
  FaultList faults(file);
  auto tree = json::parse(text, faults);
  if (!tree) return faults.in_file_order();
  check_values(*tree, options, faults);
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
