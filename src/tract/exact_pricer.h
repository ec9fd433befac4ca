// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <atomic>
#include <memory>
#include <vector>

#include "staddle/tract/pricing.h"
#include "tract/limits.h"
#include "tract/stand_model.h"

namespace staddle {

// Values every regime of a stand's lattice at the weights asked for. Growth is worked out
// once and kept as long as all trees together fit into `most_bytes`; the others are grown
// anew for every question, which changes the time taken and nothing else.
class ExactPricer : public PricingOracle {
 public:
  static constexpr double most_bytes = 600e6;

  // REQUIRES: both outlive the pricer.
  ExactPricer(const std::vector<StandModel>& models, const Limits& limits,
              double bytes = most_bytes);
  ~ExactPricer() override;

  std::size_t stands() const override;
  std::vector<WeighedRegime> best(std::size_t stand, const PlanWeights& weights,
                                  std::size_t most) override;
  // Every regime of the lattice, in its order.
  std::vector<Regime> all_regimes(std::size_t stand) const;
  double count_regimes(std::size_t stand) const;  // before limits that look at the stand

 private:
  struct Stand;
  std::vector<std::unique_ptr<Stand>> stands_;
  const Limits& limits_;
  std::atomic<double> bytes_left_;
};

}  // namespace staddle
