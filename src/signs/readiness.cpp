// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/signs/readiness.h"

#include <algorithm>

#include "staddle/base/contract.h"
#include "staddle/base/tolerance.h"

namespace staddle {
namespace {

// Stand density index of a loblolly stand that carries all it can; from memory.
constexpr double most_crowded_index = 450.0;

constexpr const char* height_sign = "dominant_height_ft";
constexpr const char* diameter_sign = "qmd_in";
constexpr const char* basal_area_sign = "basal_area_ft2_ac";
constexpr const char* crown_sign = "live_crown_ratio";
constexpr const char* cover_sign = "crown_cover_fraction";

std::optional<double> value_of(const std::string& sign, const YearRecord& year) {
  const StandMeasures& stand = year.measures;
  const bool trees = stand.trees > trees_per_acre(0) && stand.dominant_height > feet(0);
  if (sign == "age_yr") return year.at.in(years);
  if (sign == height_sign) return stand.dominant_height.in(feet);
  if (sign == diameter_sign) return stand.quadratic_mean_diameter.in(inches);
  if (sign == basal_area_sign) return stand.basal_area.in(square_feet_per_acre);
  if (sign == crown_sign) return stand.live_crown_ratio;
  if (sign == "density_index_share") {
    return stand_density_index(stand.trees, stand.quadratic_mean_diameter) / most_crowded_index;
  }
  if (sign == "relative_spacing" && trees) {
    return relative_spacing(stand.trees, stand.dominant_height);
  }
  return std::nullopt;
}

bool reached(const SignLimit& limit, double value, double threshold) {
  return limit.falling ? value <= threshold + tolerance::limit_slack
                       : value >= threshold - tolerance::limit_slack;
}

bool passed(const SignLimit& limit, double value, double threshold) {
  return limit.falling ? value < threshold - tolerance::limit_slack
                       : value > threshold + tolerance::limit_slack;
}

SignVerdict verdict_of(const SignLimit& limit, std::optional<double> value) {
  if (!value) return SignVerdict::not_yet;
  if (limit.late && (limit.late_is_strict ? passed(limit, *value, *limit.late)
                                          : reached(limit, *value, *limit.late))) {
    return SignVerdict::late;
  }
  return reached(limit, *value, limit.due) ? SignVerdict::due : SignVerdict::not_yet;
}

SignReading read_sign(const SignLimit& limit, const std::vector<YearRecord>& unthinned) {
  SignReading reading{limit.sign, value_of(limit.sign, unthinned.front()), limit.due,
                      SignVerdict::not_yet, std::nullopt};
  reading.verdict = verdict_of(limit, reading.value);
  if (reading.verdict != SignVerdict::not_yet) return reading;
  const auto ripe = std::find_if(unthinned.begin(), unthinned.end(), [&](const YearRecord& year) {
    return verdict_of(limit, value_of(limit.sign, year)) != SignVerdict::not_yet;
  });
  if (ripe != unthinned.end()) reading.about_age_yr = ripe->at.whole();
  return reading;
}

const SignReading& reading_of(const Readiness& readiness, const char* sign) {
  const auto found = std::find_if(readiness.signs.begin(), readiness.signs.end(),
                                  [&](const SignReading& reading) { return reading.sign == sign; });
  require(found != readiness.signs.end(), "a judgement needs height, diameter, basal area, crowns");
  return *found;
}

}  // namespace

ReadyLimits default_ready_limits() {
  return {{"age_yr", 12, 18, false, false},
          {height_sign, 40, 60, false, false},
          {diameter_sign, 6, std::nullopt, false, false},
          {basal_area_sign, 120, 160, false, false},
          {crown_sign, 0.40, 0.30, true, true},
          {"density_index_share", 0.45, 0.65, false, false},
          {"relative_spacing", 0.20, 0.15, true, false},
          {cover_sign, 1.0, std::nullopt, false, false}};
}

Readiness judge_readiness(const std::vector<YearRecord>& unthinned, const ReadyLimits& limits,
                          std::optional<Age> last_thinning, int years_between_entries,
                          std::optional<double> crown_cover_fraction) {
  require(!unthinned.empty(), "a judgement needs the stand of today");
  Readiness readiness;
  for (const SignLimit& limit : limits) {
    if (limit.sign != cover_sign) {
      readiness.signs.push_back(read_sign(limit, unthinned));
    } else if (crown_cover_fraction) {
      // How crowns will close in later years is not modelled: no age is given.
      readiness.signs.push_back({limit.sign, crown_cover_fraction, limit.due,
                                 verdict_of(limit, crown_cover_fraction), std::nullopt});
    }
  }

  const int now_yr = unthinned.front().at.whole();
  int due_at_yr = now_yr;
  bool comes_due = true;
  for (const char* sign : {height_sign, diameter_sign, basal_area_sign}) {
    const SignReading& reading = reading_of(readiness, sign);
    if (reading.verdict != SignVerdict::not_yet) continue;
    if (reading.about_age_yr) {
      due_at_yr = std::max(due_at_yr, *reading.about_age_yr);
    } else {
      comes_due = false;
    }
  }
  if (last_thinning) {
    const int free_again_yr = last_thinning->whole() + years_between_entries;
    readiness.too_soon_after_thinning = now_yr < free_again_yr;
    due_at_yr = std::max(due_at_yr, free_again_yr);
  }

  const bool crowns_late = reading_of(readiness, crown_sign).verdict == SignVerdict::late;
  if (!readiness.too_soon_after_thinning && crowns_late) {
    readiness.judgement = SignVerdict::late;
  } else if (!readiness.too_soon_after_thinning && comes_due && due_at_yr == now_yr) {
    readiness.judgement = SignVerdict::due;
  } else if (comes_due) {
    readiness.due_at_age_yr = due_at_yr;
  }
  return readiness;
}

}  // namespace staddle
