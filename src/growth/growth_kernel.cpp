// SPDX-License-Identifier: GPL-3.0-or-later
#include "growth/growth_kernel.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include "growth/tabled_columns.h"
#include "numeric/monotone_curve.h"
#include "staddle/base/contract.h"

namespace staddle {
namespace {

constexpr int oldest_age_yr = 150;  // the format's oldest age

// A column of a yield table, over age.
numeric::MonotoneCurve column_curve(const YieldTable& table, const std::vector<double>& column) {
  std::vector<numeric::MonotoneCurve::Point> points;
  for (std::size_t i = 0; i < column.size(); ++i) {
    points.push_back({static_cast<double>(table.age_yr[i]), column[i]});
  }
  return numeric::MonotoneCurve(std::move(points));
}

AgeRow equation_row(const EquationSet& e, double site_index_ft, int age_yr,
                    const EstablishmentResponse& response) {
  AgeRow row;
  const double age = equation_age(age_yr, response.years_gained);
  row.known = true;
  row.survival_term =
      e.survival_rate * e.survival_rate * site_index_ft * std::pow(age, e.survival_age_power);
  if (age_yr == 0) return row;  // just planted: no height, no wood
  row.timber = row.tons = true;
  row.height_ft = dominant_height(e, feet(site_index_ft), staddle::age(age)).in(feet);
  const double log_height = std::log(row.height_ft);
  const auto& b = e.basal_area;
  row.log_basal_constant = b[0] + b[1] / age + b[3] * log_height + b[5] * log_height / age;
  if (response.hardwood_percent != 0.0) {
    row.log_basal_constant += e.hardwood_per_percent.value() * response.hardwood_percent;
  }
  row.log_basal_exponent = b[2] + b[4] / age;
  const auto& y = e.total_weight;
  switch (e.total_weight_form) {
    case TotalWeightForm::trees_height_basal_area:
      row.log_tons_constant = y[0] + y[2] * log_height;
      row.log_tons_trees = y[1] + y[4] / age;
      row.log_tons_basal = y[3] + y[5] / age;
      break;
    case TotalWeightForm::height_basal_area:
      row.log_tons_constant = y[0] + y[1] * log_height + y[4] * log_height / age;
      row.log_tons_trees = y[3] / age;
      row.log_tons_basal = y[2] + y[5] / age;
      break;
  }
  row.crown_slope = crown_slope(age);
  return row;
}

}  // namespace

double equation_age(double age_yr, double years_gained) {
  return age_yr + years_gained * std::min(age_yr / years_gained_grown_in_yr, 1.0);
}

double crown_slope(double age_yr) { return crown_asymptote + crown_per_inverse_age / age_yr; }

GrowthKernel::GrowthKernel(const EquationSet& equations, double site_index_ft, double planted_tpa,
                           const EstablishmentResponse& response)
    : recovery_per_yr_(equations.recovery_per_yr),
      survival_floor_tpa_(equations.survival_floor_tpa),
      survival_exponent_(equations.survival_exponent) {
  require(response.hardwood_percent == 0.0 || equations.hardwood_per_percent,
          "these equations have no response to hardwoods");
  require(response.years_gained > -years_gained_grown_in_yr, "a stand does not grow backwards");
  for (int age = 0; age <= oldest_age_yr; ++age) {
    rows_.push_back(equation_row(equations, site_index_ft, age, response));
  }
  planted_ = track(planted_tpa, 0);
  if (response.precommercial) thin_young_stand(*response.precommercial);
}

// The invariant of the survivors holds for the whole life of the planted stand: the years
// before the thinning take up the difference in their survival term, so that every reader
// of the rows, the vector search too, sees one track. A cut made before the thinning would
// not be followed rightly by it; there is none.
void GrowthKernel::thin_young_stand(const PrecommercialThinning& thinning) {
  const int at = thinning.at.whole();
  const double left = thinning.to.in(trees_per_acre);
  require(left > survival_floor_tpa_, "a thinned young stand follows the survival equation");
  if (trees_at(planted_, at) <= left) return;
  const double invariant = track(left, at).invariant;
  for (int age = 0; age < at; ++age) {
    rows_[static_cast<std::size_t>(age)].survival_term += planted_.invariant - invariant;
  }
  planted_.invariant = invariant;
}

GrowthKernel::GrowthKernel(const YieldTable& table)
    : from_table_(true), recovery_per_yr_(table.options.recovery_per_yr) {
  require(table.age_yr.size() >= 4, "a yield table has at least four rows");
  first_age_ = table.age_yr.front();
  const auto height = column_curve(table, table.dominant_height_ft);
  const auto trees = column_curve(table, table.tpa);
  const auto basal_area = column_curve(table, table.basal_area_ft2_ac);
  std::vector<numeric::MonotoneCurve> tons;
  for (const auto& column : table.tons_ac) tons.push_back(column_curve(table, column));
  rows_.resize(static_cast<std::size_t>(table.age_yr.back()) + 1);
  for (int age = first_age_; age <= table.age_yr.back(); ++age) {
    const double total = std::accumulate(
        tons.begin(), tons.end(), 0.0,
        [age](double sum, const numeric::MonotoneCurve& curve) { return sum + curve.at(age); });
    add_tabled_row(age, {height.at(age), trees.at(age), basal_area.at(age), total},
                   table.options.density_exponent);
  }
  planted_ = {false, 1.0};
}

GrowthKernel::GrowthKernel(const TabledRegime& regime)
    : from_table_(true),
      cuts_tabled_(true),
      first_age_(regime.table.age_yr.front()),
      recovery_per_yr_(regime.table.options.recovery_per_yr) {
  const TabledAges ages = ages_before_cuts(regime);
  rows_.resize(static_cast<std::size_t>(regime.table.age_yr.back()) + 1);
  for (std::size_t i = 0; i < ages.height_ft.size(); ++i) {
    double total = 0.0;
    for (const auto& tons : ages.tons_ac) total += tons[i];
    add_tabled_row(first_age_ + static_cast<int>(i),
                   {ages.height_ft[i], ages.tpa[i], ages.basal_area_ft2_ac[i], total},
                   regime.table.options.density_exponent);
  }
  planted_ = {false, 1.0};
}

void GrowthKernel::add_tabled_row(int age_yr, const TabledMeasures& measures,
                                  double density_exponent) {
  AgeRow& row = rows_[static_cast<std::size_t>(age_yr)];
  row.known = true;
  row.height_ft = measures.height_ft;
  row.survival_term = measures.tpa;
  row.crown_slope = crown_slope(age_yr);
  row.timber = measures.basal_area_ft2_ac > 0.0;
  if (!row.timber) return;
  row.log_basal_exponent = density_exponent;
  row.log_basal_constant =
      std::log(measures.basal_area_ft2_ac) - density_exponent * std::log(measures.tpa);
  row.tons = measures.total_tons > 0.0;
  if (row.tons) {
    row.log_tons_constant = std::log(measures.total_tons) - std::log(measures.basal_area_ft2_ac);
  }
  row.log_tons_basal = 1.0;
}

}  // namespace staddle
