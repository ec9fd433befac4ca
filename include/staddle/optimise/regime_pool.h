// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <memory>
#include <vector>

#include "staddle/optimise/stand_problem.h"
#include "staddle/optimise/stand_solution.h"

// Many answers from one enumeration. Growth, storms and limits do not know money, so the
// regimes of a lattice and their tons are found once, whatever the rate, prices and costs.
// At one rate the value of a regime is linear in (final prices, net thinning prices, the
// establishment cost or the land's value):
//   LEV = (c + sum F_i p_i + sum H_i h_i - E) / (1 - beta)      bare land
//   forest value = c + sum F_i p_i + sum H_i h_i + beta L       standing
// F_i discounted tons sold at final prices (storms' salvage included), H_i at thinning
// prices. The best regime is then the largest of many dot products, and a regime can be
// left out where another is worth more all over the box that holds the vectors asked for:
//   (r - w)(centre) + sum |r_i - w_i| half width_i < -slack,
// the slack being larger than a tie, so that the tie rule has all that it chooses from.
namespace staddle {

// Money that may differ from answer to answer.
struct PriceVector {
  PriceList prices;
  MoneyPerAcre establishment;
  MoneyPerAcre land_value;  // standing
};

class RegimePool;

// The regimes that can be best under any of the vectors it was made for, at one rate and
// one set of yearly costs.
class PricedPool {
 public:
  // The same regime and value as solve(). REQUIRES: one of the vectors it was made for.
  PricedRegime best(const PriceVector& vector) const;
  std::size_t kept() const;

 private:
  friend class RegimePool;
  struct Content;
  explicit PricedPool(std::shared_ptr<const Content> content) : content_(std::move(content)) {}
  std::shared_ptr<const Content> content_;
};

class RegimePool {
 public:
  // A pool holds at most so many bytes of tons; larger lattices are searched one by one.
  static constexpr double most_bytes = 240e6;
  // Whether the lattice has a final harvest at all, and a pool of it would not be larger.
  static bool can_hold(const StandProblem& problem);
  // Regimes that ages, gaps, removals and the count of thinnings leave.
  static double lattice_regimes(const StandProblem& problem);

  // Enumerates the lattice by the plain evaluator's own steps. REQUIRES: can_hold(problem),
  // a case without a tax basis.
  explicit RegimePool(const StandProblem& problem);

  std::size_t regimes() const;
  // `costs`: the rate, and every cost but establishment.
  // REQUIRES: at least one vector, a price for every product.
  PricedPool priced(const Costs& costs, const std::vector<PriceVector>& vectors) const;

 private:
  friend class PricedPool;
  struct Content;
  std::shared_ptr<const Content> content_;
};

}  // namespace staddle
