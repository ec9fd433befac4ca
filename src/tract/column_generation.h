// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <limits>
#include <vector>

#include "staddle/tract/pricing.h"
#include "staddle/tract/tract_options.h"
#include "tract/master.h"

namespace staddle {

// Rounds of a master program and of searches for regimes that it lacks.
class ColumnGeneration {
 public:
  enum class End {
    proved,   // no stand has a regime that would earn more
    gap_met,  // bound - value within what was asked
    stopped,  // by the caller, or the time was up
    gave_up,  // the linear program was in numerical trouble: message()
  };

  // REQUIRES: all outlive it; the master has a column of every stand.
  ColumnGeneration(const std::vector<StandModel>& models, const Limits& limits, Master& master,
                   PricingOracle& oracle, const TractOptions& options);

  // To the end of the master's stage. The bound is of the stage's own value.
  End run(TractProgress::Stage told_as);

  double bound() const { return bound_; }
  // Where the bound was found: worths of the limits, and each stand's best acre there.
  const std::vector<double>& bound_worths() const { return bound_worths_; }
  int rounds() const { return rounds_; }
  const std::string& message() const { return message_; }
  // Of bounds found so far none is true of what follows.
  void forget_bound();

  double seconds_left() const;
  bool time_is_up() const;

 private:
  struct Search {
    double best_worth = 0.0;
    std::vector<TractColumn> columns;  // one that earns at the master's prices, or none
    std::vector<TractColumn> others;   // of a slow stand: to be tried before it is searched
  };

  End one_round(bool& finished);
  // Searches every stand at the worths; adds columns that earn at the master's prices, and
  // proves a bound. False where it was stopped.
  bool search(const std::vector<double>& worths, std::size_t& added);
  // The same without a bound: of slow stands only what is known of them is tried.
  bool search_known(std::size_t& added);
  bool for_all_stands(const std::function<void(std::size_t)>& work) const;
  Search search_stand(std::size_t stand, const std::vector<double>& worths) const;
  Search try_known(std::size_t stand) const;
  bool earns(const TractColumn& column) const;
  std::size_t add(std::vector<Search>& searches);
  bool gap_is_met() const;
  void tell(TractProgress::Stage told_as) const;

  const std::vector<StandModel>& models_;
  const Limits& limits_;
  Master& master_;
  PricingOracle& oracle_;
  const TractOptions& options_;
  bool any_slow_ = false;
  std::vector<std::vector<TractColumn>> known_;  // of slow stands, not in the master
  double bound_ = std::numeric_limits<double>::infinity();
  std::vector<double> bound_worths_;
  int rounds_ = 0;
  std::string message_;
};

}  // namespace staddle
