// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "staddle/advise/advice.h"
#include "staddle/advise/advise.h"
#include "staddle/futures/futures_options.h"
#include "staddle/futures/futures_solution.h"

namespace staddle {

// The futures of the best regime and of the stated ones (of tables of fixed regimes: of
// each at its best final age), under the same storms.
struct StormForecast {
  FuturesOptions asked;                       // how many futures, which seed, choices
  bool standing = false;
  std::optional<MoneyPerAcre> successor_lev;  // standing: LEV*, where it is known
  struct Told {
    std::string name;                         // "best", as stated, or of the table
    Plan plan;
    RegimeFutures futures;
    // Where tax is asked for: the same futures in money after tax. A basis saves in each
    // of them what it saves as storms are expected to leave the tons.
    std::optional<RegimeFutures> after_tax;
  };
  std::optional<Hazard> hazard_after_tax;     // what cleaning up costs then
  std::vector<Told> regimes;                  // the best first, then in the stated order
  bool stopped = false;                       // a stop request left out the last ones
};

// Solves the problem and simulates. Standing stands: a lost acre takes the value that the
// land has after the harvest. Faults as advise() has them.
// REQUIRES: a hazard; options.futures within its limits.
Result<StormForecast> forecast_storms(const AdviseProblem& problem,
                                      const FuturesOptions& options = {});

}  // namespace staddle
