// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/growth/equation_set.h"

#include <cmath>

#include "staddle/base/contract.h"

namespace staddle {
namespace {

// Height at an age as a share of the site index.
double height_share(const EquationSet& equations, double age_yr) {
  const double reached = 1.0 - std::exp(-equations.height_rate * age_yr);
  const double at_base = 1.0 - std::exp(-equations.height_rate * equations.site_base_age_yr);
  return std::pow(reached / at_base, equations.height_shape);
}

}  // namespace

Height dominant_height(const EquationSet& equations, Height site_index, Age at) {
  return site_index * height_share(equations, at.in(years));
}

Height site_index_from_height(const EquationSet& equations, Height dominant, Age at) {
  require(at > age(0), "site_index_from_height needs an age above zero");
  return dominant / height_share(equations, at.in(years));
}

}  // namespace staddle
