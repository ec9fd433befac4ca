// SPDX-License-Identifier: GPL-3.0-or-later
#include "products/table_columns.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "numeric/monotone_curve.h"
#include "staddle/base/random.h"
#include "support/near.h"
#include "support/seed.h"

namespace staddle {
namespace {

using numeric::MonotoneCurve;

double between(RandomStream& random, double low, double high) {
  return low + (high - low) * random.next_uniform();
}

// Diameters that rise, or fall again from some row on.
YieldTable random_table(RandomStream& random, bool rising) {
  YieldTable table;
  table.products = {"logs", "pulpwood"};
  table.tons_ac.resize(2);
  const int turn = rising ? 100 : 20 + static_cast<int>(random.next_below(20));
  for (int at = 6; at <= 50; at += 4) {
    const double grown = at <= turn ? at : turn - 0.6 * (at - turn);
    table.age_yr.push_back(at);
    table.dominant_height_ft.push_back(2.0 * at);
    table.tpa.push_back(700.0 * std::exp(-0.02 * at));
    table.basal_area_ft2_ac.push_back(5.0 * grown * between(random, 0.95, 1.05));
    table.tons_ac[0].push_back(std::max(0.0, 2.0 * (at - 15)));
    table.tons_ac[1].push_back(3.0 * at);
  }
  return table;
}

MonotoneCurve curve_of(const YieldTable& table, const std::vector<double>& column) {
  std::vector<MonotoneCurve::Point> points;
  for (std::size_t i = 0; i < column.size(); ++i) {
    points.push_back({static_cast<double>(table.age_yr[i]), column[i]});
  }
  return MonotoneCurve(std::move(points));
}

// The nearest age with this diameter by small steps over the table's own curves; the end
// row of the nearer diameter where no age has it.
double nearest_age(const YieldTable& table, double diameter_in, int age_yr, double step) {
  const MonotoneCurve trees = curve_of(table, table.tpa);
  const MonotoneCurve area = curve_of(table, table.basal_area_ft2_ac);
  const auto diameter = [&](double at) {
    return std::sqrt(area.at(at) / trees.at(at) * 576.0 / std::numbers::pi);
  };
  double nearest = HUGE_VAL;
  for (double at = table.age_yr.front(); at + step <= table.age_yr.back(); at += step) {
    if ((diameter(at) < diameter_in) == (diameter(at + step) < diameter_in)) continue;
    const double crossing = at + 0.5 * step;
    if (std::fabs(crossing - age_yr) < std::fabs(nearest - age_yr)) nearest = crossing;
  }
  if (std::isfinite(nearest)) return nearest;
  double end = table.age_yr.front();
  for (const int row : table.age_yr) {
    if (std::fabs(diameter(row) - diameter_in) < std::fabs(diameter(end) - diameter_in)) end = row;
  }
  return end;
}

TEST_CASE("a stand of another diameter reads the table at the nearest age that has it") {
  const support::TaggedSeed seed("ages of diameters");
  constexpr double step = 1.0 / 64.0;
  int at_an_end = 0;
  for (std::uint64_t number = 0; number < 30; ++number) {
    RandomStream random = seed.stream(number);
    const YieldTable table = random_table(random, number % 2 == 0);
    const TableColumns columns(table);
    for (int draw = 0; draw < 25; ++draw) {
      const int age_yr = 8 + static_cast<int>(random.next_below(40));
      const double diameter = between(random, 2.0, 16.0);
      CAPTURE(number, age_yr, diameter);
      const double found = columns.age_of_diameter(diameter, age_yr);
      const double expected = nearest_age(table, diameter, age_yr, step);
      // Two ages that are equally near may be told either way by steps.
      const bool as_near =
          std::fabs(std::fabs(found - age_yr) - std::fabs(expected - age_yr)) <= step;
      CHECK((std::fabs(found - expected) <= step || as_near));
      at_an_end += diameter > columns.most_diameter_in();
    }
  }
  CHECK(at_an_end > 20);
}

}  // namespace
}  // namespace staddle
