// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/key_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "signs/plain_words.h"

namespace staddle {
namespace {

std::string looked_up(const std::map<std::string, std::string>& names, const std::string& key) {
  const auto found = names.find(key);
  if (found != names.end()) return found->second;
  std::string text = key;
  std::replace(text.begin(), text.end(), '_', ' ');
  return text;
}

}  // namespace

std::string limit_in_words(const std::string& key) {
  static const std::map<std::string, std::string> names = {
      {"guards/max_removal_fraction", "share of basal area taken"},
      {"guards/min_height_ft", "height at a thinning, feet"},
      {"guards/min_qmd_in", "mean diameter at a thinning, inches"},
      {"guards/min_live_crown_ratio", "live crown at a thinning"},
      {"guards/min_residual_basal_area_ft2_ac", "basal area left, sq ft/acre"},
      {"min_residual_basal_area_ft2_ac", "basal area left, sq ft/acre"},
      {"one-ton rule", "tons of a product that a cut may add, below zero"},
      {"min_removal_tons_ac", "tons an acre taken"},
      {"min_sale_tons", "tons of a sale"},
      {"max_thinnings", "number of thinnings"},
      {"years_between_entries", "years between entries"},
      {"thinning_age_yr", "age of a thinning"},
      {"final_harvest_age_yr", "age of the final harvest"}};
  return looked_up(names, key);
}

std::string limit_value(const std::string& key, double value) {
  const bool share = key.ends_with("_fraction") || key.ends_with("_ratio");
  return share ? words::percent(value) : fmt::format("{:.4g}", value);
}

std::string breaks_in_words(const std::vector<BrokenLimit>& breaks) {
  std::string text;
  for (const BrokenLimit& limit : breaks) {
    if (!text.empty()) text += "; ";
    if (limit.limit == residual_not_reached) {
      text += "the stand has not reached the residual, so nothing is cut then";
      continue;
    }
    text += fmt::format("{} {}, allowed {}", limit_in_words(limit.limit),
                        limit_value(limit.limit, limit.value),
                        limit_value(limit.limit, limit.allowed));
  }
  return text;
}

std::string guard_in_words(const std::string& key, const Guards& guards) {
  if (key == "max_removal_fraction" && guards.max_removal_fraction) {
    return fmt::format("take no more than {} at once",
                       words::removal(*guards.max_removal_fraction));
  }
  if (key == "dense_stand_now" && guards.dense_stand_now) {
    return fmt::format("up to {} now, if the stand carries {} sq ft",
                       words::removal(guards.dense_stand_now->max_removal_fraction),
                       words::number(guards.dense_stand_now->basal_area.in(square_feet_per_acre)));
  }
  if (key == "min_residual_basal_area_ft2_ac" && guards.min_residual_basal_area) {
    return fmt::format("leave at least {} sq ft",
                       words::number(guards.min_residual_basal_area->in(square_feet_per_acre)));
  }
  if (key == "min_height_ft" && guards.min_height) {
    return fmt::format("no thinning below {} feet of height",
                       words::number(guards.min_height->in(feet)));
  }
  if (key == "min_qmd_in" && guards.min_qmd) {
    return fmt::format("no thinning below {} inches of mean diameter",
                       words::number(guards.min_qmd->in(inches), 1));
  }
  if (key == "min_live_crown_ratio" && guards.min_live_crown_ratio) {
    return fmt::format("no thinning where the live crown is below {}",
                       words::percent(*guards.min_live_crown_ratio));
  }
  return looked_up({}, key);
}

std::string sign_in_words(const std::string& sign) {
  static const std::map<std::string, std::string> names = {
      {"age_yr", "age, years"},
      {"dominant_height_ft", "dominant height, feet"},
      {"qmd_in", "mean diameter, inches"},
      {"basal_area_ft2_ac", "basal area, sq ft/acre"},
      {"live_crown_ratio", "live crown, share of height"},
      {"density_index_share", "density index, share of 450"},
      {"relative_spacing", "spacing, share of height"},
      {"crown_cover_fraction", "crown cover, share of ground"}};
  return looked_up(names, sign);
}

}  // namespace staddle
