// SPDX-License-Identifier: GPL-3.0-or-later
#include "cruise/tree_tons.h"

#include <algorithm>
#include <cmath>

#include "staddle/base/contract.h"
#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

class TreeScale {
 public:
  TreeScale(const EquationSet& equations, const std::vector<ProductLimit>& products)
      : coefficient_(equations.merchantable[0]),
        power_(equations.merchantable[1]),
        products_(products) {}

  // The products of a tree that weighs one ton.
  std::vector<double> shares_of(const TallyTree& tree) const {
    std::vector<double> shares(products_.size(), 0.0);
    const double dbh_in = tree.dbh.in(inches);
    if (!reaches(dbh_in, products_.back())) return shares;
    const std::size_t grade = class_of(tree);
    const std::size_t smallest = products_.size() - 1;
    const double own = share_to_top(products_[grade], dbh_in);
    const double kept = tree.product.empty() ? products_[grade].grade_fraction : 1.0;
    if (grade == smallest) {
      shares[smallest] = own;
      return shares;
    }
    shares[grade] += kept * own;
    shares[grade + 1] += (1.0 - kept) * own;
    shares[smallest] += share_to_top(products_[smallest], dbh_in) - own;
    return shares;
  }

 private:
  static bool reaches(double dbh_in, const ProductLimit& product) {
    return dbh_in >= product.min_dbh.in(inches)-tolerance::limit_slack;
  }

  std::size_t class_of(const TallyTree& tree) const {
    const auto found =
        std::find_if(products_.begin(), products_.end(), [&](const ProductLimit& product) {
          return tree.product.empty() ? reaches(tree.dbh.in(inches), product)
                                      : product.name == tree.product;
        });
    require(found != products_.end(), "the product of a tallied tree is one of the products");
    return static_cast<std::size_t>(found - products_.begin());
  }

  double share_to_top(const ProductLimit& product, double dbh_in) const {
    return std::exp(coefficient_ * std::pow(product.top.in(inches) / dbh_in, power_));
  }

  double coefficient_;
  double power_;
  const std::vector<ProductLimit>& products_;
};

}  // namespace

TreeTons weigh_trees(const std::vector<WeighedTree>& trees, const std::vector<double>& heights_ft,
                     double total_tons_ac, const EquationSet& equations,
                     const std::vector<ProductLimit>& products) {
  const auto bulk = [&](std::size_t i) {
    return trees[i].dbh_in * trees[i].dbh_in * heights_ft[i];
  };
  double total_bulk = 0.0;
  for (std::size_t i = 0; i < trees.size(); ++i) total_bulk += trees[i].tpa * bulk(i);
  require(total_bulk > 0.0, "trees are weighed where there are some");
  const double tons_per_bulk = total_tons_ac / total_bulk;
  const TreeScale scale(equations, products);
  TreeTons result;
  for (std::size_t i = 0; i < trees.size(); ++i) {
    std::vector<double> tons = scale.shares_of(*trees[i].tree);
    for (double& share : tons) share *= trees[i].plot_tpa * tons_per_bulk * bulk(i);
    result.by_tree.push_back(std::move(tons));
  }
  return result;
}

}  // namespace staddle
