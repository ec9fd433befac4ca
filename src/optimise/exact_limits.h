// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "optimise/champions.h"
#include "optimise/cut_kernels.h"

namespace staddle {

// The limits of a cut, read from vector arithmetic where that is far enough from every
// limit, and asked of the plain evaluator where it is not: so a search by approximate
// values admits exactly the cuts that the plain one admits.
class ExactLimits {
 public:
  // Vector arithmetic is exact to about 1e-5 of values below 1e3: trees, square feet, tons.
  static constexpr double doubt = 1e-2;

  ExactLimits(const CaseKernel& kernel, const LatticeRules& rules);

  const CutLimits& cut_limits() const { return cut_limits_; }
  // How many removals may be tried at this age; 0 outside the ages of thinnings.
  std::size_t removals_allowed(int age_yr) const {
    return allowed_[static_cast<std::size_t>(age_yr)];
  }
  // `before` holds the cuts already made.
  bool stand_may_be_cut(const LatticeRegime& before, const Trajectory& stand, int age_yr) const;
  bool cut_may_be_taken(const LatticeRegime& before, int age_yr, const CutOptions& cuts,
                        std::size_t removal) const;

 private:
  static constexpr double doubt_of_diameter_in = 1e-3, doubt_of_crown_ratio = 1e-4;
  void replay(const LatticeRegime& before, int age_yr, StandPoint& point,
              Measured& measured) const;

  const CaseKernel& kernel_;
  const LatticeRules& rules_;
  CutLimits cut_limits_;
  double least_diameter_in_, least_crown_ratio_;
  std::vector<std::size_t> allowed_;  // by age
};

}  // namespace staddle
