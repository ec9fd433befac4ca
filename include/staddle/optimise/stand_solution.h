// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "staddle/regime/regime.h"
#include "staddle/regime/simulate.h"

namespace staddle {

struct PricedRegime {
  Regime regime;
  RegimeValue value;
};

// Ages within which the value stays within `tolerance` of the best,
// max(, 2 percent of |best|), everything else re-optimised. The outermost ages: an
// age between them may be worse.
struct NearBest {
  MoneyPerAcre tolerance;
  std::optional<Age> first_thinning_low, first_thinning_high;  // absent: best has none
  Age final_harvest_low, final_harvest_high;
};

struct Certificate {
  double lattice_regimes = 0;  // before limits that look at the stand; may exceed 2^53
  std::uint64_t regimes_valued = 0;
  // Proved upper bound on what any other regime of the lattice could add.
  MoneyPerAcre gap;
};

// status      best            by_count, near_best        certificate
// optimal     the optimum     as asked                   gap 0
// stopped     best so far     what was finished          gap > 0, or infinite
// no_regime   meaningless     empty                      regimes_valued only
struct StandSolution {
  enum class Status {
    optimal,    // no regime of the lattice exceeds best by more than certificate.gap = 0
    stopped,    // the caller's stop token ended the search first
    no_regime,  // no regime of the lattice satisfies the limits
  };
  Status status = Status::no_regime;
  std::string reason;  // of no_regime: which limit leaves nothing
  PricedRegime best;
  std::vector<std::optional<PricedRegime>> by_count;  // [k]: best with exactly k thinnings
  std::optional<NearBest> near_best;
  Certificate certificate;
};

}  // namespace staddle
