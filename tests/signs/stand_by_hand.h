// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "staddle/regime/simulate.h"

// Stands and plans put together by hand, so that each limit can be straddled.
namespace staddle::by_hand {

inline StandMeasures measures(double tpa, double basal_area, double diameter_in, double height_ft,
                              std::optional<double> crown = std::nullopt) {
  return {trees_per_acre(tpa), square_feet_per_acre(basal_area), inches(diameter_in),
          feet(height_ft), crown};
}

inline YearRecord year(int age_yr, const StandMeasures& stand) {
  YearRecord record;
  record.at = age(age_yr);
  record.measures = stand;
  return record;
}

inline ThinningRecord cut(int age_yr, double removal, const StandMeasures& before) {
  ThinningRecord record;
  record.at = age(age_yr);
  record.removal_fraction = removal;
  record.before = record.after = before;
  record.after.basal_area = (1.0 - removal) * before.basal_area;
  return record;
}

// A plan with these cuts; the stand is that of the first cut from the present on.
inline RegimeReport plan(int present_yr, int final_yr, const std::vector<ThinningRecord>& cuts,
                         const StandMeasures& stand) {
  RegimeReport report;
  report.thinnings = cuts;
  report.final_harvest_age = age(final_yr);
  for (int at = present_yr; at <= final_yr; ++at) report.years.push_back(year(at, stand));
  return report;
}

// An owner's table of a stand that grows 2 ft and 4.5 ft2 a year.
inline YieldTable yield_table() {
  YieldTable table;
  table.file = "own.csv";
  table.products = {"sawtimber", "pulpwood"};
  table.tons_ac = {{}, {}};
  for (const int at : {5, 10, 20, 30, 40}) {
    table.age_yr.push_back(at);
    table.dominant_height_ft.push_back(10.0 + 2.0 * at);
    table.tpa.push_back(600.0 - 8.0 * at);
    table.basal_area_ft2_ac.push_back(4.5 * at);
    table.tons_ac[0].push_back(0.05 * at * at);
    table.tons_ac[1].push_back(2.5 * at);
  }
  return table;
}

inline StandCase stand_case() {
  const YieldTable table = yield_table();
  StandCase result{GrowthModel::from_table(table), Assortment::from_table(table), {}, {}, {}, {},
                   ThinningResponse::crown_limited, {0.95}, 1.0, {}};
  result.prices = {{dollars_per_ton(25), 1.0, {}, {}}, {dollars_per_ton(7), 1.0, {}, {}}};
  result.costs.rate = DiscountRate::real(0.05);
  result.costs.establishment = dollars_per_acre(350);
  return result;
}

inline MeasuredStand measured_at(int age_yr) {
  return {age(age_yr), trees_per_acre(480), square_feet_per_acre(70), std::nullopt, std::nullopt,
          {}};
}

// Two storms in the terms of the zones, and one that takes all it meets.
inline Hazard hazard() {
  Hazard result;
  result.zone = "coast";
  LogisticShare wind{0.12, feet(65), 0.45, 0.20, 3.0, true, 0.0};
  LogisticShare ice{0.12, feet(50), -0.25, 0.25, 3.5, false, 0.0};
  result.perils = {
      {"hurricane, moderate", 0.025, wind, 0.0, 0.25, dollars_per_acre(100), true},
      {"ice", 0.005, ice, 0.0, 0.35, dollars_per_acre(100), false},
      {"fire", 0.001, std::nullopt, 1.0, 0.0, dollars_per_acre(0), false}};
  return result;
}

}  // namespace staddle::by_hand
