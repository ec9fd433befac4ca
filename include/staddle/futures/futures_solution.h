// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "staddle/units/age.h"
#include "staddle/units/units.h"

namespace staddle {

// The costliest storm of any future. The loss counts per acre of the original stand:
// acres lost x ((1 - s) V + K). Equal losses: the earlier, then the peril named first.
struct WorstEvent {
  Age at;
  std::string peril;
  MoneyPerAcre loss;
};

// The same futures with a choice. After a storm that destroyed something, and before the
// practices and cuts of that year, the acres left are cleared where
//   (share of the original acres still standing) x B < 30 ft2/ac    or
//   clearing is worth more than going on, by more than tolerance::tie.
// 30 ft2/ac: practice after hurricanes; it also holds for a stand too young for more.
// Clearing sells what stands as the final harvest does (final prices, fee, tax, sale
// cost), then comes the land as after any harvest. Going on is worth the regime's
// expected value from there, storms at their expected shares and no further choice.
// The land's value is the one of the futures without choices.
struct ChoicesOutcome {
  MoneyPerAcre mean;
  MoneyPerAcre standard_error;
  double chance_cleared = 0.0;  // share of the futures in which the stand was cleared
};

// Expected share of the standing acres that the storms of one year destroy.
struct YearlyLossShare {
  Age at;
  double with_plan = 0.0;
  // The same stand, never cut; absent where a table tells of one fixed regime only.
  std::optional<double> unthinned;
};

// How one regime fared over all futures.
struct RegimeFutures {
  MoneyPerAcre expected_value;  // by the evaluator
  MoneyPerAcre mean;
  MoneyPerAcre standard_error;  // of the mean
  // (mean - expected value)/standard error; absent where every future is alike.
  std::optional<double> difference_in_standard_errors;
  // Value below which that share of the futures lies; linear between neighbours (type
  // 7 of Hyndman & Fan 1996, Amer. Statist. 50:361).
  struct Quantiles {
    MoneyPerAcre p05, p25, p50, p75, p95;
  } quantiles;
  // Share of the futures in which storms took at least half of the acres, all storms of
  // the rotation together, that of the harvest year included.
  double chance_half_lost = 0.0;
  std::optional<WorstEvent> worst_event;  // absent where no storm destroyed anything
  std::optional<ChoicesOutcome> choices;  // as asked
  std::vector<YearlyLossShare> annual_loss;  // from the first year on to the harvest
};

// status      regimes
// finished    one per regime of the problem, in its order
// stopped     the first ones, those that were finished
struct FuturesSolution {
  enum class Status { finished, stopped };
  Status status = Status::finished;
  std::vector<RegimeFutures> regimes;
};

}  // namespace staddle
