// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/what_to_do.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "signs/counted_words.h"
#include "signs/plain_words.h"
#include "signs/risk_note.h"
#include "staddle/scenario/planting.h"

namespace staddle {
namespace {

std::string these_acres(const Answer& answer) {
  const std::string acres_text = words::acres_of(answer.area());
  return (acres_text.ends_with("s") ? "these " : "this ") + acres_text;
}

constexpr double prism_factor = 10.0;      // square feet an acre for every "in" tree
constexpr double every_fifth_row = 0.20;   // of the basal area
constexpr int years_to_a_new_measure = 5;  // common practice, no source
constexpr double square_feet_of_an_acre = 43560.0;

std::string leaving(const ThinningRecord& cut) {
  return fmt::format("leave {} square feet of basal area and {} trees an acre",
                     square_feet(cut.after.basal_area), trees(cut.after.trees));
}

std::string prism(const ThinningRecord& cut) {
  const double in_trees = cut.after.basal_area.in(square_feet_per_acre) / prism_factor;
  return fmt::format("With a factor-10 prism that leaves {} \"in\" trees at a point on average.",
                     words::number(in_trees, 1));
}

// Where the plan takes more than a third: the two lighter cuts beside it.
std::string lighter_way(const Answer& answer) {
  const std::optional<ThirdInstead>& lighter = answer.advice.third_instead;
  if (!lighter) return "";
  const Regime& regime = lighter->best.regime;
  const std::size_t count = regime.thinnings.size();
  if (count == 0) {
    return fmt::format(
        " Where no cut may take more than a third, not thinning at all is best and "
        "costs {} an acre.",
        words::size_of(lighter->cost));
  }
  return fmt::format(
      " A lighter way is {} {} of at most a third: {}; {} {} an acre, and "
      "the stand is never opened so far.",
      words::count(count), count == 1 ? "cut" : "cuts", answer.brief(regime),
      count == 1 ? "it costs" : "they cost", words::about(lighter->cost));
}

// What to leave this season, where the plan would wait a little.
std::string cut_now(const Answer& answer) {
  if (!answer.advice.sale_now || answer.advice.sale_now->plan.thinnings.empty()) return "";
  const double share = answer.advice.sale_now->plan.thinnings.front().removal_fraction;
  const BasalArea now = answer.advice.best.years.front().measures.basal_area;
  return fmt::format(" (cut this season, leave {} square feet)", square_feet((1.0 - share) * now));
}

std::string thin_text(const Answer& answer) {
  const ThinningRecord& cut = *answer.cuts.front();
  const std::string share = words::percent(cut.removal_fraction);
  if (answer.action == Action::thin) {
    return fmt::format("Thin this season: {}, which takes about {} of the basal area; {}. {}{}",
                       leaving(cut), share, pattern(answer, cut), prism(cut), lighter_way(answer));
  }
  return fmt::format(
      "A thinning is due. Waiting {}, to {}, earns {} an acre, so thin when a good buyer is "
      "found, this season or later: {} {}, which takes about {} of the basal area{}; {}. {}{}",
      answer.dates.wait(cut.at), answer.dates.name(cut.at),
      words::about(*answer.advice.waiting_earns), answer.dates.on(cut.at), leaving(cut), share,
      cut_now(answer), pattern(answer, cut), prism(cut), lighter_way(answer));
}

bool some_thinning_is_possible(const Advice& advice) {
  return std::ranges::any_of(advice.alternatives,
                             [](const Alternative& other) { return other.thinnings > 0; });
}

std::string no_thinning_because(const Answer& answer) {
  const auto& earns = answer.advice.waiting_earns;
  if (earns) {
    return fmt::format(
        "the signs call for a thinning, but leaving it out earns {} an acre "
        "more than thinning now",
        words::about(*earns));
  }
  if (some_thinning_is_possible(answer.advice)) return "no thinning that the limits allow pays";
  if (answer.scenario.lattice.min_sale > tons(0)) {
    return fmt::format(
        "no thinning of {} is possible within the limits, with {} at least for a sale",
        these_acres(answer), words::counted(answer.scenario.lattice.min_sale.in(tons), "ton"));
  }
  return "no thinning is possible within the limits";
}

std::string why_a_due_thinning_waits(const Answer& answer) {
  const auto& earns = answer.advice.waiting_earns;
  if (!earns) return "none that the limits allow is open this season";
  return fmt::format("waiting {} earns {} an acre more than thinning now",
                     answer.dates.wait(answer.cuts.front()->at), words::about(*earns));
}

// Why nothing is cut now.
std::string reason_to_wait(const Answer& answer) {
  const Advice& advice = answer.advice;
  const Readiness& ready = advice.readiness;
  const Dates& dates = answer.dates;
  const auto& crown = advice.best.years.front().measures.live_crown_ratio;
  if (answer.cuts.empty() && advice.best.final_harvest.revenue <= dollars_per_acre(0)) {
    return "at these prices no sale earns anything after fees, and waiting only puts off what "
           "comes after";
  }
  if (advice.first_age_with_minimum_sale) {
    const Age first = *advice.first_age_with_minimum_sale;
    return fmt::format(
        "no thinning of {} brings the {} that you ask of a sale yet: they are first there {}",
        these_acres(answer), words::counted(answer.scenario.lattice.min_sale.in(tons), "ton"),
        dates.in(first));
  }
  if (ready.judgement == SignVerdict::late && answer.cuts.empty() && crown) {
    return fmt::format(
        "the live crown is down to {} of the height, too short for a thinning: the "
        "trees left would hardly use the room",
        words::percent(*crown));
  }
  if (ready.too_soon_after_thinning) {
    const int gap = answer.scenario.lattice.years_between_entries;
    return fmt::format("the stand was thinned {}, and {} {} between two entries",
                       dates.in(answer.scenario.stand.standing->last_thinning->at),
                       words::counted(gap, "year"), gap == 1 ? "belongs" : "belong");
  }
  if (ready.judgement == SignVerdict::not_yet && !answer.cuts.empty()) {
    return ready.due_at_age_yr
               ? fmt::format("by height, diameter and basal area the stand will be ready {}",
                             dates.in(age(*ready.due_at_age_yr)))
               : "by height, diameter and basal area the stand is not ready";
  }
  if (answer.cuts.empty()) {
    return fmt::format("{}, and waiting for the final harvest earns more than your {} a year",
                       no_thinning_because(answer), answer.rate());
  }
  return "the signs call for a thinning, but " + why_a_due_thinning_waits(answer);
}

std::string nothing_text(const Answer& answer) {
  const Age next = answer.cuts.empty() ? answer.final_age() : answer.cuts.front()->at;
  Age look = std::min(next, answer.dates.present() + years(years_to_a_new_measure));
  const auto& due = answer.advice.readiness.due_at_age_yr;
  const bool waits_for_signs =
      due && age(*due) > answer.dates.present() && !answer.advice.first_age_with_minimum_sale;
  if (waits_for_signs && !answer.cuts.empty()) look = std::min(look, age(*due));
  if (answer.advice.readiness.too_soon_after_thinning) {
    const Age free_again = answer.scenario.stand.standing->last_thinning->at +
                           years(answer.scenario.lattice.years_between_entries);
    look = std::min(look, free_again);
  }
  std::string text = fmt::format("Cut nothing this season; look again {}: {}.",
                                 answer.dates.in(look), reason_to_wait(answer));
  const bool forbidden = !answer.final_harvest_is_allowed(answer.dates.present());
  if (forbidden && answer.advice.advantage < dollars_per_acre(0)) {
    text += fmt::format(" A sale of the whole stand now would be worth more, but you allow a final "
                        "harvest at {} years at the earliest.",
                        answer.scenario.lattice.final_from.whole());
  }
  return text;
}

std::string sell_text(const Answer& answer) {
  const HarvestRecord& harvest = answer.advice.best.final_harvest;
  const auto& crown = answer.advice.best.years.front().measures.live_crown_ratio;
  std::string text = fmt::format(
      "{}: all {} square feet and {} trees an acre.",
      answer.action == Action::sell
          ? "Sell the whole stand this season"
          : fmt::format("Do not thin; sell the whole stand within {}, when a good buyer is found",
                        answer.dates.wait(answer.final_age())),
      square_feet(harvest.before.basal_area), trees(harvest.before.trees));
  if (answer.advice.readiness.judgement == SignVerdict::late && crown) {
    text += fmt::format(
        " The crowns forbid a thinning: the live crown is down to {} of the "
        "height, and such trees hardly use the room that a thinning gives them.",
        words::percent(*crown));
  }
  return text;
}

// Common practice, no source: natural regeneration brings 2,000 to 4,000 an acre.
constexpr TreeDensity fewest_of_seedfall = trees_per_acre(2000);

std::string plant_text(const Answer& answer) {
  const std::optional<TreeDensity> planted = planting_of(answer.scenario).planted;
  const EstablishmentAlternative* used = used_alternative(answer.scenario);
  const bool loses = answer.advice.best.value.objective < dollars_per_acre(0);
  const auto told = [&](const std::string& what) {
    const std::string text =
        loses ? "Planting pine here loses money at these prices and this rate. If you grow it all "
                "the same, " +
                    what
              : words::capital(what);
    return used ? fmt::format("{} This is the way named \"{}\".", text, used->name) : text;
  };
  constexpr const char* season = "between December and early March";
  if (!planted) return told(fmt::format("plant as the yield table foresees, {}.", season));
  if (*planted >= fewest_of_seedfall) {
    return told(fmt::format("let the land seed itself: about {} seedlings of {} an acre come up.",
                            trees(*planted), answer.species()));
  }
  const double spacing = std::sqrt(square_feet_of_an_acre / planted->in(trees_per_acre));
  return told(fmt::format("plant {} seedlings of {} an acre, one every {} by {} feet, {}.",
                          trees(*planted), answer.species(), words::number(spacing, 1),
                          words::number(spacing, 1), season));
}

}  // namespace

std::string square_feet(BasalArea basal_area) {
  return words::number(basal_area.in(square_feet_per_acre));
}
std::string trees(TreeDensity density) { return words::number(density.in(trees_per_acre)); }

std::string pattern(const Answer& answer, const ThinningRecord& cut) {
  if (answer.thinned_before() || &cut != answer.cuts.front()) {
    return "take no rows: mark the trees to keep, evenly spaced, and cut the forked, cankered and "
           "crowded ones between them";
  }
  if (!notes::exceeds(cut.removal_fraction, every_fifth_row)) {
    return "take out every fifth row for access and little else; never every second row";
  }
  return "take out every fifth row for access (20 percent of the basal area) and the rest from "
         "below between the rows: forked, cankered and suppressed trees first; never every second "
         "row";
}

std::string what_to_do(const Answer& answer) {
  switch (answer.action) {
    case Action::plant:
      return plant_text(answer);
    case Action::thin:
    case Action::thin_soon:
      return thin_text(answer);
    case Action::sell:
    case Action::sell_soon:
      return sell_text(answer);
    case Action::nothing:
      break;
  }
  return nothing_text(answer);
}

}  // namespace staddle
