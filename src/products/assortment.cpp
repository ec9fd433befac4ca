// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/products/assortment.h"

#include <cmath>

#include "products/assortment_kernel.h"
#include "staddle/base/contract.h"

namespace staddle {

std::vector<ProductLimit> default_products() {
  return {{"sawtimber", inches(11.5), inches(8), 1.0},
          {"chip_n_saw", inches(8.5), inches(6), 1.0},
          {"pulpwood", inches(4.5), inches(3), 1.0}};
}

Assortment Assortment::from_equations(const EquationSet& equations,
                                      const std::vector<ProductLimit>& products) {
  for (std::size_t i = 1; i < products.size(); ++i) {
    require(products[i].min_dbh < products[i - 1].min_dbh, "product dbh limits strictly fall");
    require(products[i].top <= products[i - 1].top, "product tops do not rise");
  }
  return Assortment(std::make_shared<const AssortmentKernel>(equations, products));
}

Assortment Assortment::from_table(const YieldTable& table) {
  return Assortment(std::make_shared<const AssortmentKernel>(table));
}

Assortment Assortment::from_tabled_regime(const TabledRegime& regime) {
  return Assortment(std::make_shared<const AssortmentKernel>(regime));
}

const std::vector<std::string>& Assortment::product_names() const { return kernel_->names(); }

std::vector<Yield> Assortment::tons(const GrowthModel& growth, Age at, TreeDensity trees,
                                    BasalArea basal_area) const {
  const AgeRow& row = growth.kernel().row(at.whole());
  std::vector<Yield> result(size());
  if (!row.timber || trees <= trees_per_acre(0) || basal_area <= square_feet_per_acre(0)) {
    return result;
  }
  StandTerms stand;
  stand.age_yr = at.whole();
  stand.log_tpa = std::log(trees.in(trees_per_acre));
  stand.log_basal_area = std::log(basal_area.in(square_feet_per_acre));
  stand.log_diameter = std::log(quadratic_mean_diameter(trees, basal_area).in(inches));
  double tons[max_products];
  kernel_->tons(row, stand, tons);
  for (std::size_t i = 0; i < size(); ++i) result[i] = tons_per_acre(tons[i]);
  return result;
}

}  // namespace staddle
