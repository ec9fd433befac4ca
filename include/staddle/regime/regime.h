// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "staddle/units/age.h"
#include "staddle/units/units.h"

namespace staddle {

// One entry of a regime: a share of the basal area at an age.
struct Thinning {
  Age at;
  double removal_fraction = 0.0;
};

// What is done to a stand until it is cut: thinnings in order, then the harvest.
struct Regime {
  std::vector<Thinning> thinnings;
  Age final_harvest;
};

// A thinning as an owner may state it: exactly one of the three is given.
struct StatedThinning {
  Age at;
  enum class By { removal_fraction, residual_basal_area, residual_trees };
  By by = By::removal_fraction;
  double removal_fraction = 0.0;
  BasalArea residual_basal_area;
  TreeDensity residual_trees;
};

struct StatedRegime {
  std::string name;
  std::vector<StatedThinning> thinnings;
  Age final_harvest;
};

StatedRegime stated(const std::string& name, const Regime& regime);

}  // namespace staddle
