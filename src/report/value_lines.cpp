// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "report/answer.h"
#include "report/changes.h"
#include "report/key_words.h"
#include "signs/plain_words.h"

namespace staddle {
namespace {

std::string if_sold_today(const Answer& answer) {
  const SellToday& sale = *answer.advice.sell_today;
  std::string text = fmt::format("If everything were sold today, the timber would {} {} after fees",
                                 sale.timber < dollars_per_acre(0) ? "cost" : "bring",
                                 answer.both(sale.timber));
  const AfterHarvest& after = answer.scenario.after_harvest;
  const auto& lev = answer.advice.successor_lev;
  const bool loses = lev && *lev < dollars_per_acre(0);
  const bool burden = sale.land < dollars_per_acre(0);
  if (after.kind == AfterHarvest::Kind::land_price) {
    text += burden ? fmt::format(", and the land, whose yearly costs exceed the price that you "
                                 "gave, would be a burden of {} in today's money",
                                 answer.both(sale.land))
                   : fmt::format(", and the land, at the price that you gave, is worth {} in "
                                 "today's money",
                                 answer.both(sale.land));
  } else if (loses && after.kind == AfterHarvest::Kind::replant) {
    text += fmt::format(", and the land would be a burden of {}: replanting loses money at these "
                        "prices and this rate, so look at the alternatives among the risks below",
                        answer.both(sale.land));
  } else if (loses) {
    text += fmt::format("; replanting would lose {} an acre, so the land {} {} beside it",
                        words::size_of(*lev), burden ? "is a burden of" : "counts for",
                        words::size_of(sale.land));
  } else {
    text += fmt::format(", and the land, replanted, is worth another {} to you",
                        answer.both(sale.land));
  }
  return text + ".";
}

std::string if_left_for_five_years(const Answer& answer) {
  const WaitFiveYears& wait = *answer.advice.wait_five;
  const MoneyPerAcre loss = wait.loss_against_best;
  const bool small = words::size_of(loss).starts_with("less than");
  const std::string size = (small ? "" : "about ") + answer.both(loss);
  std::string text = "If nothing is done for five years, ";
  if (loss > dollars_per_acre(0)) {
    text += size + " is lost even if the best is done afterwards";
  } else if (loss < dollars_per_acre(0)) {
    text += fmt::format("{} is gained by a final harvest {}, beyond the last age that you allow",
                        size, answer.dates.in(wait.plan.regime.final_harvest));
  } else {
    text += "nothing is lost";
  }
  text += fmt::format("; the stand then holds {} square feet of basal area an acre",
                      words::number(wait.then.basal_area.in(square_feet_per_acre)));
  if (wait.then.live_crown_ratio) {
    text += fmt::format(" and live crowns of {}", words::percent(*wait.then.live_crown_ratio));
  }
  return text + ".";
}

std::string as_good(const Answer& answer) {
  const NearBest& near = answer.advice.near_best;
  // Nothing may move where the stand can only be sold now.
  if (!near.first_thinning_low && near.final_harvest_low == near.final_harvest_high) return "";
  std::string text = "; ";
  if (near.first_thinning_low && near.first_thinning_high) {
    text += fmt::format("{} thinning {} and ", answer.thinned_before() ? "the next" : "a first",
                        answer.dates.within(*near.first_thinning_low, *near.first_thinning_high));
  }
  return text +
         fmt::format("a final harvest {} {} within {} an acre of the best, the rest adjusted",
                     answer.dates.within(near.final_harvest_low, near.final_harvest_high),
                     near.first_thinning_low ? "come" : "comes", words::size_of(near.tolerance));
}

std::string advantage(const Answer& answer) {
  const Advice& advice = answer.advice;
  std::string text;
  if (answer.action == Action::plant) {
    const MoneyPerAcre lev = advice.best.value.objective;
    text = lev < dollars_per_acre(0)
               ? fmt::format("Planted so for ever, the land loses {} an acre in today's money at "
                             "your {} a year, so planting does not pay",
                             words::size_of(lev), answer.rate())
               : fmt::format("Planted so for ever, the land is worth {} to you in today's money at "
                             "your {} a year",
                             answer.both(lev), answer.rate());
    if (!answer.cuts.empty()) {
      text += fmt::format("; that is {} an acre better than without any thinning",
                          words::size_of(advice.advantage));
    }
  } else if (answer.action == Action::sell) {
    const auto& wait = advice.wait_five;
    const bool later_is_better = wait && wait->loss_against_best < dollars_per_acre(0);
    text = fmt::format("No other plan{} is worth more than selling today, in today's money at your "
                       "{} a year", later_is_better ? " within the ages that you allow" : "",
                       answer.rate());
  } else if (advice.advantage < dollars_per_acre(0)) {
    text = fmt::format("In today's money at your {} a year the plan is worth {} less than selling "
                       "everything today, which the earliest age that you allow for the final "
                       "harvest, {} years, rules out",
                       answer.rate(), answer.both(advice.advantage),
                       answer.scenario.lattice.final_from.whole());
  } else {
    text = fmt::format("In today's money at your {} a year the plan is worth {} more than selling "
                       "everything today", answer.rate(), answer.both(advice.advantage));
  }
  return text + as_good(answer) + ".";
}

// What it would mean to keep the plan where another is best.
std::string keeping(const Survival& survival) {
  const std::string breaks = breaks_in_words(survival.kept_plan_breaks);
  const bool gains = survival.kept_plan_loss < dollars_per_acre(0);
  const std::string size = words::size_of(survival.kept_plan_loss);
  if (breaks.empty()) return fmt::format("would then lose {} an acre", size);
  return fmt::format("would then break your limits ({}), and {} {} an acre{}", breaks,
                     gains ? "be worth" : "lose", size, gains ? " more" : "");
}

std::string what_would_change_it(const Answer& answer) {
  std::vector<std::string> kept;
  std::string changes;
  for (const Survival& survival : answer.advice.survives) {
    const std::string change = change_in_words(survival.change);
    if (survival.same_advice) {
      kept.push_back(change);
    } else if (!survival.best) {
      changes += fmt::format(" With {} no plan within the limits is left.", change);
    } else {
      changes += fmt::format(" With {} better: {}; keeping to this plan {}.", change,
                             answer.brief(survival.best->regime), keeping(survival));
    }
  }
  const std::string text =
      kept.empty() ? "The advice leans on growth and prices."
                   : fmt::format("The advice stays the same with {}.",
                                 words::list(changes_drawn_together(kept), "or"));
  return text + changes;
}

}  // namespace

std::vector<Line> value_lines(const Answer& answer) {
  std::vector<Line> lines;
  if (answer.advice.sell_today) lines.push_back({6, if_sold_today(answer)});
  if (answer.advice.wait_five) lines.push_back({7, if_left_for_five_years(answer)});
  lines.push_back({8, advantage(answer)});
  if (!answer.advice.survives.empty()) lines.push_back({9, what_would_change_it(answer)});
  return lines;
}

}  // namespace staddle
