// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "staddle/signs/risk_notes.h"

// One function per topic; nothing where there is nothing to note.
namespace staddle::notes {

RiskNote storm(const RiskFacts& facts);
std::optional<RiskNote> heavy_removal(const RiskFacts& facts);
std::optional<RiskNote> tall_or_slender(const RiskFacts& facts);
std::optional<RiskNote> crowns(const RiskFacts& facts);
std::optional<RiskNote> bark_beetle(const RiskFacts& facts);
std::optional<RiskNote> root_disease(const RiskFacts& facts);
std::optional<RiskNote> long_rotation(const RiskFacts& facts);
std::optional<RiskNote> density(const RiskFacts& facts);
std::optional<RiskNote> land_value(const RiskFacts& facts);

// Limits of the storm points; each counts only when exceeded.
inline constexpr double third = 1.0 / 3.0;
inline constexpr double tall_ft = 60.0;
inline constexpr double slender = 95.0;
inline constexpr double very_slender = 105.0;
inline constexpr double hurricane_chance = 0.02;

// Whether a value lies beyond a limit by more than tolerance::limit_slack.
bool exceeds(double value, double limit);

// The cuts of the plan that cut something.
std::vector<const ThinningRecord*> cuts_of(const RegimeReport& plan);

// 12 H / Dq just before the cut.
double slenderness_before(const ThinningRecord& thinning);

}  // namespace staddle::notes
