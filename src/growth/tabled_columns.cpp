// SPDX-License-Identifier: GPL-3.0-or-later
#include "growth/tabled_columns.h"

#include <algorithm>

#include "numeric/monotone_curve.h"
#include "staddle/base/contract.h"

namespace staddle {
namespace {

using Points = std::vector<numeric::MonotoneCurve::Point>;

double straight_between(const Points& points, double x) {
  const auto right =
      std::find_if(points.begin(), points.end(), [x](const auto& point) { return point.x >= x; });
  if (right == points.begin() || right->x == x) return right->y;
  const auto left = right - 1;
  return left->y + (right->y - left->y) * (x - left->x) / (right->x - left->x);
}

// Writes the whole ages after the stretch's first up to its last.
void spread(const Points& points, std::vector<double>& by_age) {
  constexpr std::size_t fewest_for_a_curve = 4;
  const int from = static_cast<int>(points.front().x);
  const int to = static_cast<int>(points.back().x);
  if (points.size() < fewest_for_a_curve) {
    for (int age = from + 1; age <= to; ++age) by_age.push_back(straight_between(points, age));
    return;
  }
  const numeric::MonotoneCurve curve(points);
  for (int age = from + 1; age <= to; ++age) by_age.push_back(curve.at(age));
}

const TabledThinning* thinning_at(const TabledRegime& regime, int age_yr) {
  for (const TabledThinning& thinning : regime.thinnings) {
    if (thinning.age_yr == age_yr) return &thinning;
  }
  return nullptr;
}

}  // namespace

std::vector<double> column_before_cuts(
    const TabledRegime& regime, const std::vector<double>& column,
    const std::function<double(double, const TabledThinning&)>& before_cut) {
  const YieldTable& table = regime.table;
  std::vector<double> by_age = {column.front()};
  Points stretch = {{static_cast<double>(table.age_yr.front()), column.front()}};
  for (std::size_t row = 1; row < table.age_yr.size(); ++row) {
    const TabledThinning* thinning = thinning_at(regime, table.age_yr[row]);
    const double at = table.age_yr[row];
    stretch.push_back({at, thinning ? before_cut(column[row], *thinning) : column[row]});
    const bool last = row + 1 == table.age_yr.size();
    if (!thinning && !last) continue;
    spread(stretch, by_age);
    stretch = {{at, column[row]}};
  }
  return by_age;
}

std::size_t row_of_age(const YieldTable& table, int age_yr) {
  const auto found = std::find(table.age_yr.begin(), table.age_yr.end(), age_yr);
  require(found != table.age_yr.end(), "a tabled thinning has a row at its age");
  return static_cast<std::size_t>(found - table.age_yr.begin());
}

TabledAges ages_before_cuts(const TabledRegime& regime) {
  const YieldTable& table = regime.table;
  const auto as_listed = [](double value, const TabledThinning&) { return value; };
  const auto unthinned = [](double value, const TabledThinning& thinning) {
    return thinning.removal_fraction > 0.0 ? value / (1.0 - thinning.removal_fraction) : value;
  };
  TabledAges ages;
  ages.first_age_yr = table.age_yr.front();
  ages.height_ft = column_before_cuts(regime, table.dominant_height_ft, as_listed);
  ages.tpa = column_before_cuts(regime, table.tpa, unthinned);
  ages.basal_area_ft2_ac = column_before_cuts(regime, table.basal_area_ft2_ac, unthinned);
  for (std::size_t product = 0; product < table.tons_ac.size(); ++product) {
    ages.tons_ac.push_back(column_before_cuts(
        regime, table.tons_ac[product], [product](double value, const TabledThinning& thinning) {
          return value + thinning.tons_ac[product];
        }));
  }
  return ages;
}

}  // namespace staddle
