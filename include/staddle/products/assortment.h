// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "staddle/growth/growth_model.h"

namespace staddle {

// A product by tree class: stems at least this thick, cut to this top.
struct ProductLimit {
  std::string name;
  Diameter min_dbh;
  Diameter top;
  double grade_fraction = 1.0;  // of the class's own tons; the rest falls one product down
};

// Common practice, no source: sawtimber 11.5 in to 8, chip-n-saw 8.5 to 6,
// pulpwood 4.5 to 3.
std::vector<ProductLimit> default_products();

class AssortmentKernel;

// Tons of each product standing in a stand, largest product first. Immutable.
class Assortment {
 public:
  // REQUIRES: at least one product, dbh limits strictly falling, tops not rising.
  static Assortment from_equations(const EquationSet& equations,
                                   const std::vector<ProductLimit>& products);
  static Assortment from_table(const YieldTable& table);
  // REQUIRES: as GrowthModel::from_tabled_regime.
  static Assortment from_tabled_regime(const TabledRegime& regime);

  const std::vector<std::string>& product_names() const;
  std::size_t size() const { return product_names().size(); }

  // Tons by product of a stand that `growth` grew to this age.
  std::vector<Yield> tons(const GrowthModel& growth, Age at, TreeDensity trees,
                          BasalArea basal_area) const;

  const AssortmentKernel& kernel() const { return *kernel_; }

 private:
  explicit Assortment(std::shared_ptr<const AssortmentKernel> kernel)
      : kernel_(std::move(kernel)) {}
  std::shared_ptr<const AssortmentKernel> kernel_;
};

}  // namespace staddle
