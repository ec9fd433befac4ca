// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "signs/plain_words.h"
#include "signs/risk_note.h"

namespace staddle::notes {
namespace {

// Crowns shorter than this do not answer a thinning; common practice, no source.
constexpr double short_crown = 0.30;
// Basal area of an unthinned stand that draws bark beetles, ft2/ac; from memory.
constexpr double beetle_high = 120.0;
constexpr double beetle_elevated = 80.0;
// Beyond these the published equations are far outside what they were fitted to.
constexpr double long_rotation_yr = 35.0;
constexpr double dense_ft2_ac = 200.0;

const ThinningRecord* heaviest(const RegimeReport& plan) {
  const ThinningRecord* found = nullptr;
  for (const ThinningRecord* cut : cuts_of(plan)) {
    if (!found || cut->removal_fraction > found->removal_fraction) found = cut;
  }
  return found;
}

std::string year_of(const ThinningRecord& cut) { return std::to_string(cut.at.whole()); }

// The densest year of the plan among those up to (and with) an age.
const YearRecord& densest_until(const RegimeReport& plan, Age last) {
  const YearRecord* densest = &plan.years.front();
  for (const YearRecord& year : plan.years) {
    if (year.at <= last && year.measures.basal_area > densest->measures.basal_area) {
      densest = &year;
    }
  }
  return *densest;
}

}  // namespace

std::optional<RiskNote> heavy_removal(const RiskFacts& facts) {
  const ThinningRecord* cut = heaviest(*facts.plan);
  if (!cut || !exceeds(cut->removal_fraction, third)) return std::nullopt;
  const double before = cut->before.basal_area.in(square_feet_per_acre);
  const double after = cut->after.basal_area.in(square_feet_per_acre);
  RiskNote note{"heavy removal", RiskLevel::elevated, "", {}};
  if (exceeds(cut->removal_fraction, 0.5)) note.level = RiskLevel::high;
  note.text = fmt::format(
      "The thinning at age {} takes {} of the basal area at once, from {} to {} square feet an "
      "acre. Common practice takes about a third, up to half only where the stand carries 140 to "
      "160 square feet or more, and never more. The equations know nothing of what an opened "
      "stand suffers.",
      cut->at.whole(), words::removal(cut->removal_fraction), words::number(before),
      words::number(after));
  note.figures = {{"removal_fraction_age_" + year_of(*cut), cut->removal_fraction},
                  {"basal_area_before_ft2_ac", before},
                  {"basal_area_after_ft2_ac", after}};
  return note;
}

std::optional<RiskNote> tall_or_slender(const RiskFacts& facts) {
  const ThinningRecord* worst = nullptr;
  for (const ThinningRecord* cut : cuts_of(*facts.plan)) {
    const bool counts = exceeds(cut->before.dominant_height.in(feet), tall_ft) ||
                        exceeds(slenderness_before(*cut), slender);
    if (!counts) continue;
    if (!worst || slenderness_before(*cut) > slenderness_before(*worst)) worst = cut;
  }
  if (!worst) return std::nullopt;
  const double height = worst->before.dominant_height.in(feet);
  const double ratio = slenderness_before(*worst);
  RiskNote note{"tall or slender stand", RiskLevel::low, "", {}};
  if (exceeds(ratio, slender)) note.level = RiskLevel::elevated;
  if (exceeds(ratio, very_slender)) note.level = RiskLevel::high;
  note.text = fmt::format(
      "At the thinning at age {} the stand is {} feet tall and its trees are {} times as tall as "
      "thick. Tall, slender trees bend and break most easily in the years after they lose their "
      "neighbors.",
      worst->at.whole(), words::number(height), words::number(ratio));
  note.figures = {{"dominant_height_ft_age_" + year_of(*worst), height},
                  {"slenderness_age_" + year_of(*worst), ratio}};
  return note;
}

std::optional<RiskNote> crowns(const RiskFacts& facts) {
  for (const ThinningRecord* cut : cuts_of(*facts.plan)) {
    const std::optional<double> crown = cut->before.live_crown_ratio;
    if (!crown || !exceeds(short_crown, *crown)) continue;
    RiskNote note{"crowns", RiskLevel::high, "", {}};
    note.text = fmt::format(
        "At the thinning at age {} the live crown is {} of the height. Below 30 percent a "
        "thinning is late: trees with such short crowns hardly use the room they are given.",
        cut->at.whole(), words::percent(*crown));
    note.figures = {{"live_crown_ratio_age_" + year_of(*cut), *crown}};
    return note;
  }
  const std::optional<double> now = facts.plan->years.front().measures.live_crown_ratio;
  if (!facts.stand_case->standing || !now || !exceeds(short_crown, *now)) return std::nullopt;
  RiskNote note{"crowns", RiskLevel::elevated, "", {}};
  note.text = fmt::format(
      "The live crown is {} of the height today. Below 30 percent a thinning is late: the trees "
      "left would hardly use the room they are given, and thin tops break in wind and ice.",
      words::percent(*now));
  note.figures = {{"live_crown_ratio", *now}};
  return note;
}

std::optional<RiskNote> bark_beetle(const RiskFacts& facts) {
  const std::vector<const ThinningRecord*> cuts = cuts_of(*facts.plan);
  const Age until = cuts.empty() ? facts.plan->final_harvest_age : cuts.front()->at;
  const YearRecord& year = densest_until(*facts.plan, until);
  const double basal_area = year.measures.basal_area.in(square_feet_per_acre);
  const bool thinned_before =
      facts.stand_case->standing && facts.stand_case->standing->last_thinning.has_value();
  const bool high = exceeds(basal_area, beetle_high);
  if (!high && (thinned_before || basal_area < beetle_elevated)) return std::nullopt;
  RiskNote note{"bark beetle", high ? RiskLevel::high : RiskLevel::elevated, "", {}};
  note.text = fmt::format(
      "{} the stand carries {} square feet of basal area an acre by age {}. Bark beetles spread "
      "in crowded pine: the danger is high above 120 and raised from 80 on (from memory).",
      cuts.empty() ? "Unthinned," : "Before the first cut of this plan",
      words::number(basal_area), year.at.whole());
  if (cuts.empty()) {
    note.text += " Watch for pitch tubes and reddening tops every summer, and sell at once where "
                 "they appear.";
  } else {
    note.text += " Thinning to 70 to 100 is the known remedy (Nebeker et al. 1985).";
  }
  note.figures = {{"basal_area_ft2_ac", basal_area}, {"age_yr", year.at.in(years)}};
  return note;
}

std::optional<RiskNote> root_disease(const RiskFacts& facts) {
  if (cuts_of(*facts.plan).empty()) return std::nullopt;
  const std::optional<SiteFacts::Soil> soil = facts.site.soil;
  if (soil && *soil != SiteFacts::Soil::sand) return std::nullopt;
  RiskNote note{"root disease", RiskLevel::low, "", {}};
  if (soil) note.level = facts.site.deep_sand() ? RiskLevel::high : RiskLevel::elevated;
  note.text = soil ? "The topsoil is sand: there" : "If the topsoil is deep sand,";
  note.text += " annosus root disease can enter through fresh stumps and kill the trees that were "
               "left, some years after a thinning. Thin such ground in summer, from May to August, "
               "or have the stumps treated with borate on the day they are cut (from memory)";
  if (facts.site.month_of_cut) {
    const bool summer = *facts.site.month_of_cut >= 5 && *facts.site.month_of_cut <= 8;
    note.text += summer ? "; the month planned for the cut is within that time"
                        : "; the month planned for the cut is not within that time";
    note.figures = {{"month_of_cut", static_cast<double>(*facts.site.month_of_cut)}};
  }
  note.text += ".";
  return note;
}

std::optional<RiskNote> long_rotation(const RiskFacts& facts) {
  const double final_yr = facts.plan->final_harvest_age.in(years);
  if (!exceeds(final_yr, long_rotation_yr)) return std::nullopt;
  RiskNote note{"long rotation", RiskLevel::elevated, "", {}};
  note.text = fmt::format(
      "The final harvest comes at age {}, beyond the 35 years that are common practice where the "
      "aim is money. Older stands wait longer for storms and beetles, and growth at such ages is "
      "little measured in plantations.",
      words::number(final_yr));
  note.figures = {{"final_harvest_age_yr", final_yr}};
  return note;
}

std::optional<RiskNote> density(const RiskFacts& facts) {
  const YearRecord& year = densest_until(*facts.plan, facts.plan->final_harvest_age);
  const double basal_area = year.measures.basal_area.in(square_feet_per_acre);
  if (!exceeds(basal_area, dense_ft2_ac)) return std::nullopt;
  RiskNote note{"density", RiskLevel::elevated, "", {}};
  note.text = fmt::format(
      "The figures lean on {} square feet of basal area an acre at age {}. Above 200 few stands "
      "stay alive for long: trees die faster than any growth table tells.",
      words::number(basal_area), year.at.whole());
  note.figures = {{"basal_area_ft2_ac", basal_area}, {"age_yr", year.at.in(years)}};
  return note;
}

std::optional<RiskNote> land_value(const RiskFacts& facts) {
  if (!facts.successor_lev || *facts.successor_lev >= dollars_per_acre(0)) return std::nullopt;
  RiskNote note{"land value", RiskLevel::elevated, "", {}};
  note.text = fmt::format(
      "{} loses {} an acre at these prices, costs and this rate: bare land planted with "
      "pine for ever is worth less than nothing. {} natural regeneration from seed trees, cheaper "
      "site preparation or fewer seedlings, cost-share payments, a hunting lease, another use, "
      "or the sale of the land.",
      facts.stand_case->standing ? "Replanting after the harvest" : "Planting",
      words::about(*facts.successor_lev),
      facts.stand_case->standing ? "Alternatives after the harvest:" : "Alternatives:");
  const auto figure = [](const RiskFacts& told) {
    return std::pair(std::string("land_expectation_value_usd_ac"),
                     told.successor_lev.value_or(MoneyPerAcre()).in(dollars_per_acre));
  };
  note.figures = {figure(facts)};
  if (facts.after_tax != nullptr) note.figures_after_tax = {figure(*facts.after_tax)};
  return note;
}

}  // namespace staddle::notes
