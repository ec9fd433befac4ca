// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "regime/case_kernel.h"
#include "staddle/regime/regime.h"

namespace staddle {

// Below this a stand is cleared after a storm: practice after hurricanes, ft2/ac.
inline constexpr double cleared_below_ft2_ac = 30.0;

// One peril at one age: what it does where it strikes.
struct Blow {
  double share = 0;            // D, of the acres still standing
  double cost_usd_ac = 0;      // per acre lost, discounted to the present: what the acre
                               // would have brought in calm years, less what it brings now
  double loss_usd_ac = 0;      // D ((1-s) V + K) per acre standing, at that age
};

// One year of a regime, from the storm on.
struct FutureYear {
  int age_yr = 0;
  double expected_share = 0;   // sum of p D
  double basal_area_ft2_ac = 0;
  double clearing_cost_usd_ac = 0;  // as Blow::cost, of an acre cleared after the storm
  bool clearing_pays = false;
  bool may_clear = true;       // not in the year of the harvest
};

// A regime turned into numbers by age, all per acre standing and discounted to the
// present, so that a future is only
//   calm value - sum over storms of (acres lost) x cost.
class FutureTable {
 public:
  FutureTable(const CaseKernel& kernel, const StandCase& stand_case, const Regime& regime);

  double calm_value() const { return calm_value_; }        // no storm ever
  double expected_value() const { return expected_value_; }
  // First year after the present to the final harvest.
  const std::vector<FutureYear>& years() const { return years_; }
  const Blow& blow(std::size_t year, std::size_t peril) const {
    return blows_[year * perils_ + peril];
  }

 private:
  // Money of one year on its way into the table.
  struct YearMoney {
    double entering = 0;   // annual and dated, on the acres that entered the year
    double standing = 0;   // practices, thinning, final harvest, on those left
    double cleared = 0;    // sale of everything, the wait and the land
    std::vector<double> lost;  // by peril: salvage, clean-up, the wait and the land
  };
  double turned_bare(const CaseKernel& kernel, int age_yr, double usd_ac) const;
  void walk(const CaseKernel& kernel, const Regime& regime, std::vector<YearMoney>& money);
  void look_back(const CaseKernel& kernel, const std::vector<YearMoney>& money);

  std::size_t perils_ = 0;
  double land_value_ = 0;
  double at_start_ = 0;        // money at the present, before any year has passed
  double calm_value_ = 0, expected_value_ = 0;
  std::vector<FutureYear> years_;
  std::vector<Blow> blows_;
};

}  // namespace staddle
