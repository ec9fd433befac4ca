// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/signs/risk_notes.h"

#include <algorithm>

#include "signs/risk_note.h"
#include "staddle/base/contract.h"
#include "staddle/base/tolerance.h"

namespace staddle {
namespace notes {

bool exceeds(double value, double limit) { return value > limit + tolerance::limit_slack; }

std::vector<const ThinningRecord*> cuts_of(const RegimeReport& plan) {
  std::vector<const ThinningRecord*> cuts;
  for (const ThinningRecord& thinning : plan.thinnings) {
    if (!thinning.cuts_nothing) cuts.push_back(&thinning);
  }
  return cuts;
}

double slenderness_before(const ThinningRecord& thinning) {
  return slenderness(thinning.before.dominant_height, thinning.before.quadratic_mean_diameter);
}

}  // namespace notes

std::vector<RiskNote> risk_notes(const RiskFacts& facts) {
  require(facts.stand_case != nullptr && facts.plan != nullptr, "notes are of a plan for a stand");
  std::vector<RiskNote> result = {notes::storm(facts)};
  for (const auto topic : {notes::heavy_removal, notes::tall_or_slender, notes::crowns,
                           notes::bark_beetle, notes::root_disease, notes::long_rotation,
                           notes::density, notes::land_value}) {
    if (std::optional<RiskNote> note = topic(facts)) result.push_back(std::move(*note));
  }
  std::stable_sort(result.begin(), result.end(),
                   [](const RiskNote& a, const RiskNote& b) { return a.level > b.level; });
  return result;
}

}  // namespace staddle
