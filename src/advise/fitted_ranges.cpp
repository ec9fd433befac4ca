// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/advise/fitted_ranges.h"

#include <algorithm>

namespace staddle {
namespace {

// The ages and trees that something leans on, held against what the equations were
// fitted to.
class Leaning {
 public:
  void on(Age at, const StandMeasures& stand) {
    ages_.push_back(at.in(years));
    on(stand.trees);
  }
  void on(TreeDensity trees) { trees_.push_back(trees.in(trees_per_acre)); }

  std::vector<OutsideRange> outside(const FittedEquations& fitted, const std::string& of) const {
    std::vector<OutsideRange> found;
    const auto note = [&](const char* what, const FittedRange& range,
                          const std::vector<double>& values) {
      OutsideRange farthest{what, 0.0, range.low, range.high, of};
      double excess = 0.0;
      for (const double value : values) {
        const double beyond = std::max(range.low - value, value - range.high);
        if (beyond <= excess) continue;
        excess = beyond;
        farthest.value = value;
      }
      if (excess > 0.0) found.push_back(farthest);
    };
    note("age_yr", fitted.equations.fitted_age_yr, ages_);
    note("tpa", fitted.equations.fitted_tpa, trees_);
    if (fitted.site_index) {
      note("site_index_ft", fitted.equations.fitted_site_index_ft, {fitted.site_index->in(feet)});
    }
    return found;
  }

  // Nothing grows yet in the year of planting: of it only the trees count.
  void on_beginning(const RegimeReport& plan) {
    const YearRecord& first = plan.years.front();
    if (first.at == age(0)) {
      on(first.measures.trees);
    } else {
      on(first.at, first.measures);
    }
  }

 private:
  std::vector<double> ages_, trees_;
};

}  // namespace

std::vector<OutsideRange> outside_fitted_range(const FittedEquations& fitted,
                                               const RegimeReport& plan, const std::string& of) {
  Leaning leaning;
  leaning.on_beginning(plan);
  for (const ThinningRecord& thinning : plan.thinnings) {
    leaning.on(thinning.at, thinning.before);
    leaning.on(thinning.at, thinning.after);
  }
  leaning.on(plan.final_harvest_age, plan.final_harvest.before);
  return leaning.outside(fitted, of);
}

std::vector<OutsideRange> outside_fitted_range_by_year(const FittedEquations& fitted,
                                                       const RegimeReport& plan) {
  Leaning leaning;
  leaning.on_beginning(plan);
  for (const YearRecord& year : plan.years) {
    if (year.at > age(0)) leaning.on(year.at, year.measures);
  }
  for (const ThinningRecord& thinning : plan.thinnings) leaning.on(thinning.at, thinning.after);
  return leaning.outside(fitted, plan.name);
}

}  // namespace staddle
