// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/describe.h"

#include <fmt/format.h>

namespace staddle::support {
namespace {

std::string age_or_none(const std::optional<Age>& at) {
  return at ? fmt::format("{}", at->whole()) : "none";
}

}  // namespace

std::string describe(const Regime& regime) {
  std::string text;
  for (const Thinning& thinning : regime.thinnings) {
    text += fmt::format("cut {:a} at {}, ", thinning.removal_fraction, thinning.at.whole());
  }
  return text + fmt::format("final {}", regime.final_harvest.whole());
}

std::string describe(const PricedRegime& priced) {
  return fmt::format("{}: {:.17g}", describe(priced.regime),
                     priced.value.objective.in(dollars_per_acre));
}

std::string describe(const StandSolution& solution) {
  std::string text = fmt::format("status {}\n", static_cast<int>(solution.status));
  if (solution.status == StandSolution::Status::no_regime) return text + solution.reason;
  text += "best " + describe(solution.best) + "\n";
  for (const auto& entry : solution.by_count) {
    text += "of a count " + (entry ? describe(*entry) : std::string("none")) + "\n";
  }
  if (solution.near_best) {
    const NearBest& near_best = *solution.near_best;
    text += fmt::format("near best within {:.17g}: first thinning {} to {}, final {} to {}\n",
                        near_best.tolerance.in(dollars_per_acre),
                        age_or_none(near_best.first_thinning_low),
                        age_or_none(near_best.first_thinning_high),
                        near_best.final_harvest_low.whole(), near_best.final_harvest_high.whole());
  }
  return text + fmt::format("lattice {:.17g}, gap {}", solution.certificate.lattice_regimes,
                            solution.certificate.gap.in(dollars_per_acre));
}

}  // namespace staddle::support
