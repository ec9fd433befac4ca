// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <stop_token>
#include <vector>

#include "staddle/tract/pricing.h"
#include "tract/limits.h"
#include "tract/stand_model.h"

namespace staddle {

// Values every regime of a stand's lattice at the weights asked for. Growth is worked out
// once and kept as long as all trees together fit into `bytes`, stand after stand; the
// others are grown anew for every question.
class ExactPricer : public PricingOracle {
 public:
  static constexpr double most_bytes = 600e6;

  // REQUIRES: both outlive the pricer. A stop leaves trees to be grown for every question.
  ExactPricer(const std::vector<StandModel>& models, const Limits& limits,
              double bytes = most_bytes, unsigned threads = 0, std::stop_token stop = {});
  ~ExactPricer() override;

  std::size_t stands() const override;
  bool is_slow(std::size_t stand) const override;
  std::vector<WeighedRegime> best(std::size_t stand, const PlanWeights& weights,
                                  std::size_t most) override;
  // Every regime of the lattice, in its order.
  std::vector<Regime> all_regimes(std::size_t stand) const;
  double count_regimes(std::size_t stand) const;  // before limits that look at the stand

 private:
  struct Stand;
  std::vector<std::unique_ptr<Stand>> stands_;
  const Limits& limits_;
};

}  // namespace staddle
