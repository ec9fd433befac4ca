// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "signs/plain_words.h"
#include "signs/risk_note.h"

namespace staddle::notes {
namespace {

double hurricane_chance_of(const Hazard& hazard) {
  double chance = 0.0;
  for (const Peril& peril : hazard.perils) {
    if (peril.hurricane) chance += peril.annual_probability;
  }
  return chance;
}

// One thinning judged by points, with what counts against it.
struct Points {
  int points = 0;
  std::vector<std::string> reasons;
};

Points points_of(const ThinningRecord& thinning) {
  Points judged;
  const int at = thinning.at.whole();
  const auto count = [&](int points, const std::string& reason) {
    judged.points += points;
    judged.reasons.push_back(reason);
  };
  if (exceeds(thinning.removal_fraction, third)) {
    count(1, fmt::format("the thinning at age {} takes {} of the basal area, more than a third", at,
                         words::removal(thinning.removal_fraction)));
  }
  const double height = thinning.before.dominant_height.in(feet);
  if (exceeds(height, tall_ft)) {
    count(1, fmt::format("the stand is {} feet tall when it is thinned at age {}",
                         words::number(height), at));
  }
  const double ratio = slenderness_before(thinning);
  if (exceeds(ratio, slender)) {
    count(exceeds(ratio, very_slender) ? 2 : 1,
          fmt::format("its trees are slender at age {}, {} times as tall as thick", at,
                      words::number(ratio)));
  }
  return judged;
}

Points points_of(const RiskFacts& facts) {
  Points worst;
  for (const ThinningRecord* thinning : cuts_of(*facts.plan)) {
    const Points judged = points_of(*thinning);
    if (judged.points > worst.points) worst = judged;
  }
  const double chance = hurricane_chance_of(facts.stand_case->hazard);
  if (exceeds(chance, hurricane_chance)) {
    ++worst.points;
    worst.reasons.push_back(fmt::format("hurricanes strike this zone with {} a year",
                                        words::chance(chance)));
  }
  return worst;
}

RiskLevel level_of(int points) {
  if (points >= 4) return RiskLevel::high;
  return points >= 2 ? RiskLevel::elevated : RiskLevel::low;
}

std::string ages_of(const Regime& regime) {
  std::vector<std::string> ages;
  for (const Thinning& thinning : regime.thinnings) {
    ages.push_back(std::to_string(thinning.at.whole()));
  }
  return words::list(ages);
}

// Whether the plan is what the remedy asks for: several cuts of a third at most, at
// least five years apart.
bool follows_remedy(const RegimeReport& plan) {
  constexpr double apart_yr = 5.0;
  const std::vector<const ThinningRecord*> cuts = cuts_of(plan);
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    if (exceeds(cuts[i]->removal_fraction, third)) return false;
    if (i > 0 && (cuts[i]->at - cuts[i - 1]->at).in(years) < apart_yr) return false;
  }
  return cuts.size() > 1;
}

// The two lighter cuts, and what they cost where that was worked out.
std::string remedy(const RiskFacts& facts) {
  if (follows_remedy(*facts.plan)) {
    const std::string text =
        "The remedy, lighter thinnings of a third at most and at least five years apart, is in "
        "this plan already";
    return text + (facts.stand_case->standing ? ". " : "; what is left of it is an earlier first "
                                                       "one. ");
  }
  std::string text =
      "The remedy is two lighter thinnings, a third at most, at least five years apart";
  if (facts.stand_case->standing) {
    text += ". ";
  } else {
    text += ", or an earlier first one. ";
  }
  if (!facts.plan_of_thirds || !facts.cost_of_a_third) return text;
  const std::size_t cuts = facts.plan_of_thirds->thinnings.size();
  if (cuts == 0) {
    text += "Where no cut may take more than a third, it pays best here not to thin at all";
  } else {
    text += fmt::format("Here {} lighter {} at {} {} would cost {} an acre",
                        words::count(cuts), cuts == 1 ? "cut" : "cuts", cuts == 1 ? "age" : "ages",
                        ages_of(*facts.plan_of_thirds), words::about(*facts.cost_of_a_third));
  }
  if (facts.stand_case->hazard.active() && facts.loss_saved_by_a_third) {
    const bool saves = *facts.loss_saved_by_a_third >= dollars_per_acre(0);
    text += fmt::format(" and {} {} an acre of expected storm loss",
                        saves ? "save" : "add", words::about(*facts.loss_saved_by_a_third));
  }
  return text + ". ";
}

std::string against(const Points& judged) {
  if (judged.reasons.empty()) return "";
  std::string text = "What counts against this plan: ";
  for (const std::string& reason : judged.reasons) text += reason + "; ";
  return text.replace(text.size() - 2, 2, ". ");
}

std::string without_zone(const RiskFacts& facts, const Points& judged) {
  std::string text = "No storm zone was chosen, so storms are not in these figures. ";
  if (cuts_of(*facts.plan).empty()) {
    return text + "This plan does not open the stand by thinning.";
  }
  text += "A thinned stand is more exposed to wind and ice for about five years, the more so the "
          "more is taken and the taller and more slender the trees are. ";
  return text + against(judged);
}

std::string zone_text(const Hazard& hazard) {
  std::vector<std::string> chances;
  for (const Peril& peril : hazard.perils) {
    chances.push_back(words::peril(peril.name) + " " + words::chance(peril.annual_probability));
  }
  return fmt::format("{}, chances of a storm in any one year (assumptions): {}. ",
                     hazard.zone == "own" ? "Own perils" : "Storm zone " + hazard.zone,
                     words::list(chances));
}

void tell_thinning(const StormAfterThinning& storm, RiskNote& note) {
  std::vector<std::string> shares;
  for (const StormAfterThinning::PerilShare& peril : storm.perils) {
    shares.push_back(fmt::format("{} {} (without the opening {})",
                                 words::peril(peril.peril),
                                 words::percent(peril.share_with),
                                 words::percent(peril.share_without)));
    note.figures.emplace_back(fmt::format("{} damage_share_with_age_{}", peril.peril,
                                          storm.at.whole()), peril.share_with);
    note.figures.emplace_back(fmt::format("{} damage_share_without_age_{}", peril.peril,
                                          storm.at.whole()), peril.share_without);
  }
  note.text += fmt::format(
      "Of the acres that it strikes in the first year after the thinning at age {}, a storm would "
      "destroy: {}. ", storm.at.whole(), words::list(shares));
  note.text += fmt::format("Over five years, or up to the next entry, that thinning adds {} an "
                           "acre of expected loss",
                           words::size_of(storm.extra_expected_loss));
  if (!storm.worst_peril.empty()) {
    note.text += fmt::format("; the worst single event is {} at age {}, {} an acre",
                             words::peril(storm.worst_peril), storm.worst_at.whole(),
                             words::size_of(storm.worst_event));
  }
  note.text += ". ";
  const std::string at = std::to_string(storm.at.whole());
  note.figures.emplace_back("extra_expected_loss_usd_ac_age_" + at,
                            storm.extra_expected_loss.in(dollars_per_acre));
  note.figures.emplace_back("worst_event_usd_ac_age_" + at,
                            storm.worst_event.in(dollars_per_acre));
}

std::string ratio_in_words(const std::optional<double>& odds_ratio) {
  return odds_ratio ? fmt::format("at {:.4g}", *odds_ratio) : std::string("as assumed here");
}

// The value over the range of odds ratios, and whether the advice holds.
void tell_odds_range(const RiskFacts& facts, RiskNote& note) {
  if (facts.odds_range.empty()) return;
  std::vector<std::string> values, others;
  for (const RiskFacts::OddsOutcome& outcome : facts.odds_range) {
    const std::string ratio = ratio_in_words(outcome.odds_ratio);
    values.push_back(words::money(outcome.best_value) + " " + ratio);
    if (!outcome.same_advice) others.push_back(ratio);
    note.figures.emplace_back(
        outcome.odds_ratio ? fmt::format("best_value_usd_ac_odds_ratio_{:.4g}", *outcome.odds_ratio)
                           : std::string("best_value_usd_ac_odds_ratio_assumed"),
        outcome.best_value.in(dollars_per_acre));
  }
  note.text += fmt::format("By the odds ratio of damage where half was removed, for all storms "
                           "alike, the best plan is worth, an acre: {}; ", words::list(values));
  note.text += others.empty() ? std::string("the advice is the same for all of them. ")
                              : fmt::format("the advice is another {}. ", words::list(others));
}

void with_zone(const RiskFacts& facts, const Points& judged, RiskNote& note) {
  const Hazard& hazard = facts.stand_case->hazard;
  note.text = zone_text(hazard);
  for (const Peril& peril : hazard.perils) {
    note.figures.emplace_back(peril.name + " annual_probability", peril.annual_probability);
  }
  for (const StormAfterThinning& storm : storms_after_thinnings(*facts.stand_case, *facts.plan)) {
    tell_thinning(storm, note);
  }
  note.text += "How much a thinning raises the damage and how fast that passes are assumptions: "
               "no published figure for southern pine tells it by removal and years. ";
  tell_odds_range(facts, note);
  note.text += against(judged);
}

}  // namespace

RiskNote storm(const RiskFacts& facts) {
  const Points judged = points_of(facts);
  RiskNote note{"storm", level_of(judged.points), "", {}};
  note.figures.emplace_back("points", judged.points);
  for (const ThinningRecord* thinning : cuts_of(*facts.plan)) {
    const std::string at = std::to_string(thinning->at.whole());
    note.figures.emplace_back("removal_fraction_age_" + at, thinning->removal_fraction);
    note.figures.emplace_back("dominant_height_ft_age_" + at,
                              thinning->before.dominant_height.in(feet));
    note.figures.emplace_back("slenderness_age_" + at, slenderness_before(*thinning));
  }
  if (facts.stand_case->hazard.active()) {
    with_zone(facts, judged, note);
  } else {
    note.text = without_zone(facts, judged);
  }
  const bool too_much = std::ranges::any_of(cuts_of(*facts.plan), [](const ThinningRecord* cut) {
    return exceeds(cut->removal_fraction, third);
  });
  const bool thins = !cuts_of(*facts.plan).empty();
  if (too_much || (thins && note.level != RiskLevel::low)) note.text += remedy(facts);
  if (facts.cost_of_a_third) {
    note.figures.emplace_back("third_instead_cost_usd_ac",
                              facts.cost_of_a_third->in(dollars_per_acre));
  }
  if (facts.loss_saved_by_a_third) {
    note.figures.emplace_back("third_instead_loss_saved_usd_ac",
                              facts.loss_saved_by_a_third->in(dollars_per_acre));
  }
  while (note.text.ends_with(' ')) note.text.pop_back();
  if (facts.after_tax != nullptr) {
    for (const auto& figure : storm(*facts.after_tax).figures) {
      const bool money = figure.first.find("usd_ac") != std::string::npos;
      if (money) note.figures_after_tax.push_back(figure);
    }
  }
  return note;
}

}  // namespace staddle::notes
