// SPDX-License-Identifier: GPL-3.0-or-later
#include "futures/describe.h"

#include <fmt/format.h>

namespace staddle::support {
namespace {

std::string bits(double value) { return fmt::format("{:a} ", value); }
std::string bits(MoneyPerAcre value) { return bits(value.in(dollars_per_acre)); }

std::string line_of(const RegimeFutures& regime) {
  std::string text = bits(regime.expected_value) + bits(regime.mean) + bits(regime.standard_error) +
                     bits(regime.difference_in_standard_errors.value_or(-99.0));
  const RegimeFutures::Quantiles& q = regime.quantiles;
  text += bits(q.p05) + bits(q.p25) + bits(q.p50) + bits(q.p75) + bits(q.p95);
  text += bits(regime.chance_half_lost);
  if (regime.worst_event) {
    text += fmt::format("{} {} ", regime.worst_event->at.whole(), regime.worst_event->peril) +
            bits(regime.worst_event->loss);
  }
  if (regime.choices) {
    text += bits(regime.choices->mean) + bits(regime.choices->standard_error) +
            bits(regime.choices->chance_cleared);
  }
  for (const YearlyLossShare& year : regime.annual_loss) {
    text += fmt::format("{} ", year.at.whole()) + bits(year.with_plan) +
            bits(year.unthinned.value_or(-99.0));
  }
  return text + "\n";
}

}  // namespace

std::string describe(const FuturesSolution& solution) {
  std::string text =
      solution.status == FuturesSolution::Status::finished ? "finished\n" : "stopped\n";
  for (const RegimeFutures& regime : solution.regimes) text += line_of(regime);
  return text;
}

}  // namespace staddle::support
