// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "staddle/regime/simulate.h"

namespace staddle {

// From which value on a sign says that a first thinning is due, and from which it is
// late. Rising signs are due from the limit up, falling ones (crown ratio, relative
// spacing) from the limit down. Common practice, no source, unless the name says so.
struct SignLimit {
  std::string sign;             // the key in the file and in the result
  double due = 0.0;
  std::optional<double> late;
  bool falling = false;         // smaller is riper
  bool late_is_strict = false;  // the late limit itself is not yet late
};

// All signs in the order in which they are shown.
using ReadyLimits = std::vector<SignLimit>;

// age 12/18 yr; height 40/60 ft; QMD 6 in; basal area 120/160 ft2/ac; crown ratio .40,
// below .30; density index as a share of 450 .45/.65 (from memory); relative spacing
// .20/.15 (from memory); crown cover 1.0 (from memory).
ReadyLimits default_ready_limits();

enum class SignVerdict { not_yet, due, late };

struct SignReading {
  std::string sign;
  std::optional<double> value;            // absent: it cannot be told at this age
  double threshold = 0.0;                 // the due limit
  SignVerdict verdict = SignVerdict::not_yet;
  std::optional<int> about_age_yr;        // when it comes due, unthinned, if it does
};

struct Readiness {
  std::vector<SignReading> signs;
  SignVerdict judgement = SignVerdict::not_yet;
  bool too_soon_after_thinning = false;   // thinned within the years between entries
  // With not_yet: the age at which the last of height, QMD and basal area comes due and
  // the years between entries have passed; absent where that does not come.
  std::optional<int> due_at_age_yr;
};

// Judges the stand of the first of `unthinned`, looking ahead along the others for the
// ages at which signs come due. The first rule that applies: not yet, if thinned within
// `years_between_entries`; late, if the crown ratio is late; due, if height, diameter
// and basal area are each due or late; else not yet. Each limit is reached within
// tolerance::limit_slack.
// REQUIRES: at least one year; limits for the crown ratio, height, QMD and basal area.
Readiness judge_readiness(const std::vector<YearRecord>& unthinned, const ReadyLimits& limits,
                          std::optional<Age> last_thinning, int years_between_entries,
                          std::optional<double> crown_cover_fraction = std::nullopt);

}  // namespace staddle
