// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/optimise/regime_pool.h"

#include <algorithm>

#include "optimise/candidates.h"
#include "optimise/regime_pool_filter.h"
#include "optimise/regime_pool_pricing.h"
#include "regime/evaluate.h"
#include "staddle/base/contract.h"
#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

// How a price vector becomes the numbers that coefficients are multiplied with:
// final prices, thinning prices, 1, then establishment or land value. A thinning price
// that is factor x final price - discount for every vector is no number of its own: its
// coefficient is shared out over the final price and the 1.
class Coordinates {
 public:
  Coordinates(const std::vector<PriceVector>& vectors, bool standing) : standing_(standing) {
    require(!vectors.empty(), "a pool is priced for at least one vector");
    const PriceList& first = vectors.front().prices;
    for (std::size_t i = 0; i < first.size(); ++i) {
      const bool follows = std::all_of(vectors.begin(), vectors.end(), [&](const PriceVector& v) {
        const ProductPrice& price = v.prices[i];
        return price.thinning_factor == first[i].thinning_factor &&
               price.thinning_discount == first[i].thinning_discount &&
               price.stumpage * price.thinning_factor >= price.thinning_discount;
      });
      thinning_.push_back({follows, first[i].thinning_factor,
                           first[i].thinning_discount.in(dollars_per_ton)});
    }
  }

  std::vector<double> of(const PriceVector& vector) const {
    std::vector<double> point;
    for (const ProductPrice& price : vector.prices) {
      point.push_back(price.stumpage.in(dollars_per_ton));
    }
    for (std::size_t i = 0; i < thinning_.size(); ++i) {
      if (!thinning_[i].follows_final) {
        point.push_back(net_thinning_price(vector.prices[i]).in(dollars_per_ton));
      }
    }
    point.push_back(1.0);
    point.push_back((standing_ ? vector.land_value : vector.establishment).in(dollars_per_acre));
    return point;
  }

  // Writes one coefficient per number of a point.
  void row_of(const PoolCoefficients& sums, std::vector<double>& row) const {
    const double scale = standing_ ? 1.0 : 1.0 / (1.0 - sums.land_weight);
    row.clear();
    double money = sums.money;
    for (std::size_t i = 0; i < thinning_.size(); ++i) {
      const Thinning& thinning = thinning_[i];
      const double shared = thinning.follows_final ? sums.thinning[i] : 0.0;
      row.push_back(scale * (sums.final[i] + thinning.factor * shared));
      money -= thinning.discount * shared;
    }
    for (std::size_t i = 0; i < thinning_.size(); ++i) {
      if (!thinning_[i].follows_final) row.push_back(scale * sums.thinning[i]);
    }
    row.push_back(scale * money);
    row.push_back(standing_ ? sums.land_weight : -scale);
  }

 private:
  struct Thinning {
    bool follows_final;
    double factor, discount;
  };
  bool standing_;
  std::vector<Thinning> thinning_;
};

}  // namespace

struct RegimePool::Content {
  explicit Content(const StandProblem& asked)
      : problem(asked),
        kernel(problem.stand_case),
        rules(problem, kernel),
        tree(grow_pool_tree(kernel, rules)) {
    require(!kernel.has_basis(), "what a tax basis saves is not linear in prices");
  }

  StandProblem problem;
  CaseKernel kernel;
  LatticeRules rules;
  PoolTree tree;
};

struct PricedPool::Content {
  std::shared_ptr<const RegimePool::Content> pool;
  StandCase stand_case;                // with the costs priced
  Coordinates coordinates;
  std::size_t width = 0;
  std::vector<LatticeRegime> regimes;  // those that are left
  std::vector<double> columns;         // [number of the point][regime]
};

bool RegimePool::can_hold(const StandProblem& problem) {
  const CaseKernel kernel(problem.stand_case);
  const LatticeRules rules(problem, kernel);
  if (rules.final_from() > rules.final_to()) return false;
  // With storms a stretch keeps all its years, about twice the final harvests.
  const double numbers = kernel.hazard_active()
                             ? 2.0 * static_cast<double>(kernel.products() + 3)
                             : static_cast<double>(kernel.products()) + 1.0;
  return rules.count_regimes() * numbers * sizeof(double) <= most_bytes;
}

double RegimePool::lattice_regimes(const StandProblem& problem) {
  const CaseKernel kernel(problem.stand_case);
  return LatticeRules(problem, kernel).count_regimes();
}

RegimePool::RegimePool(const StandProblem& problem)
    : content_(std::make_shared<const Content>(problem)) {}

std::size_t RegimePool::regimes() const { return content_->tree.regimes; }

PricedPool RegimePool::priced(const Costs& costs, const std::vector<PriceVector>& vectors) const {
  StandCase stand_case = content_->problem.stand_case;
  stand_case.costs = costs;
  const Coordinates coordinates(vectors, stand_case.standing.has_value());
  std::vector<double> points;
  for (const PriceVector& vector : vectors) {
    const std::vector<double> point = coordinates.of(vector);
    points.insert(points.end(), point.begin(), point.end());
  }
  const std::size_t width = points.size() / vectors.size();
  StandCase priceless = stand_case;
  priceless.costs.establishment = MoneyPerAcre();
  for (ProductPrice& price : priceless.prices) price = {};
  DominanceFilter filter(width, points);
  std::vector<double> row;
  price_tree(content_->tree, CaseKernel(priceless),
             [&](const PoolCoefficients& sums, std::size_t stretch, int final_yr) {
               coordinates.row_of(sums, row);
               filter.offer(row.data(), stretch, final_yr);
             });
  filter.finish();
  auto content = std::make_shared<PricedPool::Content>(
      PricedPool::Content{content_, std::move(stand_case), coordinates, width, {}, {}});
  content->columns.resize(width * filter.size());
  for (std::size_t i = 0; i < filter.size(); ++i) {
    LatticeRegime regime = content_->tree.stretches[filter.row(i).stretch].regime;
    regime.final_yr = filter.row(i).final_yr;
    content->regimes.push_back(regime);
    for (std::size_t j = 0; j < width; ++j) {
      content->columns[j * filter.size() + i] = filter.coefficients(i)[j];
    }
  }
  return PricedPool(std::move(content));
}

std::size_t PricedPool::kept() const { return content_->regimes.size(); }

PricedRegime PricedPool::best(const PriceVector& vector) const {
  const Content& content = *content_;
  const std::vector<double> point = content.coordinates.of(vector);
  const std::size_t count = content.regimes.size();
  std::vector<double> values(count, 0.0);
  for (std::size_t j = 0; j < content.width; ++j) {
    const double* column = content.columns.data() + j * count;
    for (std::size_t i = 0; i < count; ++i) values[i] += column[i] * point[j];
  }
  const double highest = *std::max_element(values.begin(), values.end());
  const double floor = highest - tolerance::prune_slack(highest);
  StandCase stand_case = content.stand_case;
  stand_case.prices = vector.prices;
  stand_case.costs.establishment = vector.establishment;
  stand_case.land_value = vector.land_value;
  const CaseKernel kernel(stand_case);
  // Only the plain evaluator's value is told, and by it the tie rule chooses.
  BestRegime best;
  for (std::size_t i = 0; i < count; ++i) {
    if (values[i] < floor) continue;
    const Regime regime = regime_of(content.regimes[i], content.pool->rules);
    best.offer(evaluate(kernel, regime).objective.in(dollars_per_acre), content.regimes[i]);
  }
  const Regime regime = regime_of(best.best()->choice, content.pool->rules);
  return {regime, evaluate(kernel, regime)};
}

}  // namespace staddle
