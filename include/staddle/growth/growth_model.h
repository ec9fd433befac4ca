// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>

#include "staddle/growth/equation_set.h"
#include "staddle/growth/establishment_response.h"
#include "staddle/growth/yield_table.h"

namespace staddle {

class GrowthKernel;  // plain numbers, for the evaluator's inner loop

// How one stand grows: a pure function from a state and a number of years to a
// state, made from published equations on one site or from the owner's own table.
// Immutable; copies share their tables.
class GrowthModel {
 public:
  // Equations on one site. `planted` is what bare land is planted with, `response` what
  // was done for that stand; a measured stand shows it already and has none.
  // REQUIRES: hardwood percent 0 where the equations have no response to it; a
  // precommercial thinning to more trees than the survival equation's floor, and no cut of
  // the stand up to its age.
  static GrowthModel from_equations(const EquationSet& equations, Height site_index,
                                    TreeDensity planted,
                                    const EstablishmentResponse& response = {});
  // REQUIRES: a table that the reader accepted.
  static GrowthModel from_table(const YieldTable& table);
  // One fixed regime, its thinnings already in the rows: what is read at an age is the
  // stand just before any cut of that age. REQUIRES: a row at every thinning.
  static GrowthModel from_tabled_regime(const TabledRegime& regime);

  // The first and the last whole age for which anything is known.
  Age first_age() const;
  Age last_age() const;

  Height dominant_height(Age at) const;
  // Trees alive at `to` of those alive at `from` <= to.
  TreeDensity surviving_trees(TreeDensity alive, Age from, Age to) const;
  // Basal area of an unthinned stand of this age with this many trees left.
  BasalArea unthinned_basal_area(Age at, TreeDensity trees) const;
  // Live crown ratio of an undisturbed crown: Dyer & Burkhart 1987, from memory,
  // unverified. Fitted to unthinned stands.
  double live_crown_ratio(Age at, TreeDensity trees, BasalArea basal_area) const;
  // The stand that grows from bare land when nothing is cut.
  TreeDensity planted_stand_trees(Age at) const;
  BasalArea planted_stand_basal_area(Age at) const;

  const GrowthKernel& kernel() const { return *kernel_; }

 private:
  explicit GrowthModel(std::shared_ptr<const GrowthKernel> kernel) : kernel_(std::move(kernel)) {}
  std::shared_ptr<const GrowthKernel> kernel_;
};

}  // namespace staddle
