// SPDX-License-Identifier: GPL-3.0-or-later
#include "cruise/ready_signs.h"

#include <fmt/format.h>

#include <algorithm>

namespace staddle {
namespace {

YearRecord present_of(const AppraisalProblem& problem, const Appraisal& appraisal) {
  YearRecord record;
  record.at = problem.at.value_or(age(0));
  record.measures.trees = appraisal.trees.mean;
  record.measures.basal_area = appraisal.basal_area.mean;
  record.measures.quadratic_mean_diameter = appraisal.quadratic_mean_diameter.value_or(inches(0));
  record.measures.dominant_height = appraisal.dominant_height.value_or(feet(0));
  record.measures.live_crown_ratio = appraisal.live_crown_ratio;
  return record;
}

// The site as the tally shows it; absent where its growth is not known.
std::optional<GrowthModel> growth_of(const AppraisalProblem& problem, const Appraisal& appraisal) {
  if (const auto* table = std::get_if<YieldTable>(&problem.growth)) {
    return GrowthModel::from_table(*table);
  }
  const auto* equations = std::get_if<EquationSet>(&problem.growth);
  if (!equations || !appraisal.site_index) return std::nullopt;
  return GrowthModel::from_equations(*equations, *appraisal.site_index, appraisal.trees.mean);
}

std::vector<YearRecord> years_ahead(const AppraisalProblem& problem, const Appraisal& appraisal) {
  std::vector<YearRecord> years{present_of(problem, appraisal)};
  if (!problem.at || appraisal.trees.mean <= trees_per_acre(0)) return years;
  const std::optional<GrowthModel> growth = growth_of(problem, appraisal);
  if (!growth ||
      growth->unthinned_basal_area(*problem.at, appraisal.trees.mean) <= square_feet_per_acre(0)) {
    return years;
  }
  MeasuredStand stand{*problem.at,
                      appraisal.trees.mean,
                      appraisal.basal_area.mean,
                      appraisal.live_crown_ratio,
                      std::nullopt,
                      {}};
  // Prices and costs do not matter to the signs.
  const auto* table = std::get_if<YieldTable>(&problem.growth);
  const Assortment assortment =
      table ? Assortment::from_table(*table)
            : Assortment::from_equations(std::get<EquationSet>(problem.growth), problem.products);
  const StandCase stand_case{*growth, assortment, PriceList(assortment.size()),
                             Costs{}, Hazard{},   stand};
  const Age last = std::min(std::max(problem.look_ahead_to, *problem.at), growth->last_age());
  std::vector<YearRecord> grown = grow_unthinned(stand_case, last);
  // Of today what was measured counts, not what a table says of its own stand.
  const std::optional<double> crown = grown.front().measures.live_crown_ratio;
  if (appraisal.dominant_height) grown.front().measures = years.front().measures;
  grown.front().measures.live_crown_ratio = crown;
  return grown;
}

std::string named(const std::string& sign) {
  if (sign == "dominant_height_ft") return "height";
  if (sign == "qmd_in") return "diameter";
  return "basal area";
}

// "height and diameter": those of the three deciding signs that are not yet due.
std::string unripe_signs(const Readiness& readiness) {
  std::vector<std::string> names;
  for (const SignReading& sign : readiness.signs) {
    const bool decides = sign.sign == "dominant_height_ft" || sign.sign == "qmd_in" ||
                         sign.sign == "basal_area_ft2_ac";
    if (decides && sign.verdict == SignVerdict::not_yet) names.push_back(named(sign.sign));
  }
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) text += i + 1 == names.size() ? " and " : ", ";
    text += names[i];
  }
  return text;
}

bool height_unknown(const Readiness& readiness) {
  return std::any_of(readiness.signs.begin(), readiness.signs.end(), [](const SignReading& sign) {
    return sign.sign == "dominant_height_ft" && !sign.value;
  });
}

std::string sentence_of(const Readiness& readiness) {
  switch (readiness.judgement) {
    case SignVerdict::due:
      return "A thinning is due: height, diameter and basal area have all reached their limits.";
    case SignVerdict::late:
      return "It is late for a thinning: the crowns have become too short.";
    case SignVerdict::not_yet:
      break;
  }
  if (height_unknown(readiness)) {
    return "Whether a thinning is due cannot be told: too few heights were measured.";
  }
  const std::string unripe = unripe_signs(readiness);
  if (readiness.due_at_age_yr) {
    return fmt::format("Not yet ready to thin: {} will have reached {} at about age {}.", unripe,
                       unripe.find(' ') == std::string::npos || unripe == "basal area"
                           ? "its limit"
                           : "their limits",
                       *readiness.due_at_age_yr);
  }
  return "Not yet ready to thin: " + unripe + " short of the limit.";
}

}  // namespace

void judge_from_plots(const AppraisalProblem& problem, Appraisal& appraisal) {
  ReadyLimits limits = problem.ready_limits;
  if (!problem.at) {
    std::erase_if(limits, [](const SignLimit& limit) { return limit.sign == "age_yr"; });
  }
  appraisal.readiness = judge_readiness(years_ahead(problem, appraisal), limits, std::nullopt,
                                        problem.years_between_entries, appraisal.crown_cover);
  const bool trees = appraisal.trees.mean > trees_per_acre(0);
  for (SignReading& sign : appraisal.readiness.signs) {
    const bool of_height = sign.sign == "dominant_height_ft" || sign.sign == "relative_spacing";
    const bool of_trees = sign.sign == "qmd_in" || sign.sign == "density_index_share";
    if ((of_height && !appraisal.dominant_height) || (of_trees && !trees)) {
      sign.value = std::nullopt;
      sign.about_age_yr = std::nullopt;
    }
  }
  appraisal.readiness_judgement = sentence_of(appraisal.readiness);
}

}  // namespace staddle
