// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "tract/column_generation.h"

namespace staddle {

// One regime for all acres of a stand. The linear program's plan is worth z at worths w of
// the limits; a regime that earns d less than its stand's best there costs any plan of
// whole stands at least d against z. So once a plan worth y is known, only regimes within
// z - y of their stand's best can be in a better one: when all of them are in the program
// of whole numbers, and that is solved, its plan is the best of all.
class WholeStands {
 public:
  struct Outcome {
    bool found = false;
    bool proved = false;        // the best plan, or within the gap asked
    std::vector<double> acres;  // by column of the master
    double bound = 0.0;         // no plan of whole stands is worth more
    std::string message;
  };

  // REQUIRES: the generation ran the master to its end; all outlive it.
  WholeStands(const std::vector<StandModel>& models, const Limits& limits, Master& master,
              PricingOracle& oracle, const ColumnGeneration& generation,
              const TractOptions& options);

  Outcome search();

 private:
  // Regimes within `loss` dollars of their stand's best, `most` of a stand; false where
  // there may be more.
  bool add_regimes_within(double loss, std::size_t most);
  bool take_plan_that_is_whole();
  void tell(int round) const;
  // Over the master's columns whose loss is at most this.
  void solve_over_columns(double most_loss);
  double loss_of(const TractColumn& column) const;
  double gap_allowed(double value) const;

  const std::vector<StandModel>& models_;
  const Limits& limits_;
  Master& master_;
  PricingOracle& oracle_;
  const ColumnGeneration& generation_;
  const TractOptions& options_;
  std::vector<double> best_worth_;  // by stand, per acre
  double value_ = 0.0;
  bool solved_ = false;  // the last program, to its end
  Outcome outcome_;
};

}  // namespace staddle
