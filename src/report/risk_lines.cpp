// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "report/answer.h"
#include "report/level.h"
#include "signs/plain_words.h"
#include "signs/risk_note.h"

namespace staddle {
namespace {

const RiskNote* note_of(const Advice& advice, const std::string& topic) {
  const auto found = std::ranges::find(advice.risk_notes, topic, &RiskNote::topic);
  return found == advice.risk_notes.end() ? nullptr : &*found;
}

std::string worst_storm(const Answer& answer) {
  const std::vector<StormAfterThinning>& storms = answer.advice.storm->thinnings;
  const auto worst = std::ranges::max_element(storms, {}, &StormAfterThinning::worst_event);
  if (worst == storms.end() || worst->worst_peril.empty()) {
    return "Storms are in these figures by their yearly chances (assumptions); this plan does not "
           "open the stand by thinning.";
  }
  MoneyPerAcre added;
  for (const StormAfterThinning& storm : storms) added += storm.extra_expected_loss;
  return fmt::format("The worst storm in the five years after a thinning ({}, {}) would cost {}; "
                     "over those years the thinnings add {} an acre to the loss expected, "
                     "which is in these figures (the odds are assumptions).",
                     words::peril(worst->worst_peril), answer.dates.in(worst->worst_at),
                     answer.both(worst->worst_event), words::about(added));
}

std::string no_zone(const Answer& answer) {
  std::string zones;
  for (const std::string& zone : answer.storm_zones) {
    if (zone != "none") zones += (zones.empty() ? "" : ", ") + zone;
  }
  return "No storm zone was chosen, so storms are not in these figures" +
         (zones.empty() ? std::string() : fmt::format(" (zones: {})", zones)) + ".";
}

std::string heavy_cut(const Answer& answer) {
  if (answer.cuts.empty()) {
    return " A stand that is opened by more than a third at once is more exposed to wind and ice "
           "for about five years: never let a buyer talk you into it.";
  }
  const ThinningRecord& heaviest = **std::ranges::max_element(
      answer.cuts, {}, [](const ThinningRecord* cut) { return cut->removal_fraction; });
  if (notes::exceeds(heaviest.removal_fraction, notes::third)) {
    return fmt::format(" Taking {} at once {} leaves the trees more exposed to wind and ice for "
                       "about five years; two lighter cuts at least five years apart are the "
                       "remedy.",
                       words::removal(heaviest.removal_fraction), answer.dates.in(heaviest.at));
  }
  return " A thinned stand is more exposed to wind and ice for about five years: never let a crew "
         "take more than the plan says.";
}

std::string other_risks(const Answer& answer) {
  std::vector<std::string> topics;
  for (const RiskNote& note : answer.advice.risk_notes) {
    if (note.topic == "storm" || note.level == RiskLevel::low) continue;
    topics.push_back(fmt::format("{} ({})", note.topic, level_in_words(note.level)));
  }
  if (topics.empty()) return "";
  return fmt::format(" See below on {}.", words::list(topics));
}

std::string what_could_go_wrong(const Answer& answer) {
  std::string text = answer.advice.storm ? worst_storm(answer) : no_zone(answer);
  text += heavy_cut(answer);
  const RiskNote* storm = note_of(answer.advice, "storm");
  if (storm && !answer.cuts.empty()) {
    text += fmt::format(" By {}height, slenderness and cut{} its storm risk counts as {}.",
                        answer.advice.storm ? "zone, " : "",
                        answer.advice.storm ? "" : ", the place left out,",
                        level_in_words(storm->level));
  }
  return text + other_risks(answer);
}

std::string what_it_assumes(const Answer& answer) {
  std::vector<std::string> prices;
  for (std::size_t i = 0; i < answer.scenario.prices.size(); ++i) {
    const double price = answer.scenario.prices[i].stumpage.in(dollars_per_ton);
    prices.push_back(fmt::format("{} ${:.{}f}", words::product(answer.scenario.products[i].name),
                                 price, price == static_cast<int>(price) ? 0 : 2));
  }
  std::string text = fmt::format(
      "All this assumes that prices stay as they are ({} a ton standing), that inflation is left "
      "out, and that the stand grows by {}",
      words::list(prices),
      answer.equations() ? "published equations" : "the owner's yield table");
  if (!answer.advice.outside_fitted_range.empty()) {
    text += ", here partly outside the range they were fitted to";
  }
  text += "; it is neither an appraisal nor a price for the land.";
  if (!answer.scenario.thinning_price_given && !answer.cuts.empty()) {
    text += fmt::format(" No lower price for thinnings was given: {} commonly bring $1 to $3 a "
                        "ton less.",
                        answer.thinned_before() ? "thinnings" : "first thinnings");
  }
  return text;
}

constexpr const char* how_to_sell =
    "ask several buyers for sealed bids (they need four to six weeks), for a lump sum or paid by "
    "the ton as cut, in a written contract of 12 to 24 months";

// The offer for this season's sale below which waiting is worth more, before fees.
std::string refuse_below(const Answer& answer) {
  const Costs& costs = answer.scenario.costs;
  MoneyPerAcre net, sale_cost;
  if (answer.advice.sale_now) {
    net = answer.advice.sale_now->refuse_below;
    const bool thins = !answer.advice.sale_now->plan.thinnings.empty();
    sale_cost = thins ? costs.thinning_sale_cost : costs.final_sale_cost;
  } else if (answer.action == Action::sell_soon) {
    net = answer.advice.sell_today->timber + answer.advice.sell_today->loss_against_best;
    sale_cost = costs.final_sale_cost;
  } else {
    return "";
  }
  const double kept = 1.0 - costs.sale_fee_fraction - costs.harvest_tax_fraction;
  const MoneyPerAcre offer = (net + sale_cost) / kept;
  if (offer <= dollars_per_acre(0) || words::money(offer) == "$0") {
    return "; any offer above nothing will do";
  }
  // What rounds to nothing for the whole of a small tract is told by the acre alone.
  const Money whole = offer * answer.area();
  const std::string in_all =
      words::tract_money(whole) == "$0"
          ? words::money(offer) + " an acre"
          : fmt::format("{} in all ({} an acre)", words::tract_money(whole), words::money(offer));
  return fmt::format(
      "; for a sale this season refuse any offer below {}, since waiting is worth more", in_all);
}

std::string wet_ground(const Answer& answer) {
  return answer.scenario.site.drainage == SiteFacts::Drainage::wet
             ? " The ground is wet: log in the dry season only."
             : "";
}

std::string next_month(const Answer& answer) {
  switch (answer.action) {
    case Action::plant:
      return "Next month, order the seedlings, six to twelve months before they are planted, and "
             "ask for bids on site preparation; spray in summer or early fall, before the leaves "
             "fall.";
    case Action::thin:
    case Action::thin_soon:
      return fmt::format("Next month, have a registered forester walk the stand and mark it, which "
                         "takes about two months; then {}{}.{}",
                         how_to_sell, refuse_below(answer), wet_ground(answer));
    case Action::sell:
    case Action::sell_soon:
      return fmt::format("Next month, have a registered forester walk the stand and cruise it; "
                         "then {}{}.{}",
                         how_to_sell, refuse_below(answer), wet_ground(answer));
    case Action::nothing:
      break;
  }
  if (answer.dates.years_until(answer.next_entry()) <= 1) {
    return fmt::format(
        "Next month, have a registered forester walk the stand: the sale of {} takes "
        "two months to mark; for it {}.{}",
        answer.dates.calendar() ? answer.dates.name(answer.next_entry()) : "next year", how_to_sell,
        wet_ground(answer));
  }
  return fmt::format("Next month there is nothing to sell: walk the lines, and watch for beetles "
                     "and broken tops. When a sale comes, {}.",
                     how_to_sell);
}

}  // namespace

std::vector<Line> risk_lines(const Answer& answer) {
  return {{10, what_could_go_wrong(answer)},
          {11, what_it_assumes(answer)},
          {12, next_month(answer)}};
}

}  // namespace staddle
