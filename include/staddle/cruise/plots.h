// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "staddle/units/units.h"

// What a forester brings home from the woods: plots, and the trees tallied on each.
namespace staddle {

// How the trees of a plot were chosen, and so what one tallied tree stands for.
class PlotDesign {
 public:
  // Point samples: a tree is "in" where its diameter fills the angle of the gauge, so
  // every tallied tree stands for the same basal area, the factor (10 for the usual
  // prism). REQUIRES, all three: above zero and finite.
  static PlotDesign point_sample(BasalArea factor);
  // Plots of one area, on which every tree is tallied.
  static PlotDesign fixed_area(Area plot);
  static PlotDesign fixed_radius(Distance radius);

  bool is_point_sample() const { return point_sample_; }

  // Trees per acre that one tallied tree of this diameter stands for: factor / its basal
  // area, or 1 / plot area. REQUIRES: dbh above zero.
  TreeDensity trees_per_tallied_tree(Diameter dbh) const;
  BasalArea basal_area_per_tallied_tree(Diameter dbh) const;

 private:
  PlotDesign(bool point_sample, double factor_or_acres)
      : point_sample_(point_sample), factor_or_acres_(factor_or_acres) {}
  bool point_sample_;
  double factor_or_acres_;
};

// How far from the point a tree may stand and still be in, in feet for every inch of its
// diameter: sqrt(43560 x 0.005454154 / (pi factor)). 2.75 for a factor of 10.
double plot_radius_factor_ft_per_in(BasalArea factor);

enum class CrownClass { dominant, codominant, intermediate, suppressed };

// One tallied tree. Only its diameter was measured for certain.
struct TallyTree {
  Diameter dbh;
  std::optional<Height> height;
  std::optional<double> live_crown_ratio;
  std::optional<CrownClass> crown_class;
  std::string product;  // as the cruiser judged it; empty: by its diameter
  std::string species;  // empty: not noted
  std::optional<Distance> crown_width;
};

// One plot; without trees it counts all the same.
struct Plot {
  std::string name;
  std::string stratum;  // empty: the tract is one stratum
  std::vector<TallyTree> trees;
};

// A part of the tract that was sampled on its own. Its weight is its share of the acres.
struct StratumAcres {
  std::string name;
  Area acres;
};

struct Tally {
  PlotDesign design;
  std::vector<Plot> plots;
  // Those known. Strata without acres weigh by their share of the plots, the others share
  // what is left by their acres.
  std::vector<StratumAcres> strata;
};

}  // namespace staddle
