// SPDX-License-Identifier: GPL-3.0-or-later
#include "advise/judgement.h"

#include <fmt/format.h>

namespace staddle {
namespace {

std::string signs_say(const Readiness& readiness) {
  switch (readiness.judgement) {
    case SignVerdict::due:
      return "The signs say that a thinning is due";
    case SignVerdict::late:
      return "The crowns say that it is late for a thinning";
    case SignVerdict::not_yet:
      break;
  }
  if (readiness.too_soon_after_thinning) {
    return "The stand was thinned too recently to be thinned again";
  }
  if (readiness.due_at_age_yr) {
    return fmt::format("The stand is not yet ready to thin; left alone it will be at about age {}",
                       *readiness.due_at_age_yr);
  }
  return "The stand is not ready to thin";
}

std::string plan_does(const Advice& advice, Age present) {
  const Regime& plan = advice.best_plan.regime;
  if (plan.final_harvest == present) return "the plan sells the whole stand now";
  if (plan.thinnings.empty()) {
    return fmt::format("the plan does not thin it and sells it at age {}",
                       plan.final_harvest.whole());
  }
  const int wait = (plan.thinnings.front().at - present).in(years) > 0
                       ? plan.thinnings.front().at.whole() - present.whole()
                       : 0;
  if (wait == 0) return "the plan thins it this year";
  return fmt::format("the plan waits {} year{}, to age {}", wait, wait == 1 ? "" : "s",
                     plan.thinnings.front().at.whole());
}

}  // namespace

std::string readiness_sentence(const Advice& advice, Age present) {
  const bool ripe = advice.readiness.judgement != SignVerdict::not_yet;
  const Regime& plan = advice.best_plan.regime;
  const bool thins_now = !plan.thinnings.empty() && plan.thinnings.front().at == present;
  std::string sentence = signs_say(advice.readiness);
  sentence += ripe == thins_now ? ", and " : ", but ";
  sentence += plan_does(advice, present);
  if (ripe && !thins_now) {
    sentence += advice.waiting_earns
                    ? fmt::format(", which earns ${:.0f} an acre more than thinning now",
                                  advice.waiting_earns->in(dollars_per_acre))
                    : "; no thinning that the limits allow is open this year";
  }
  return sentence + ".";
}

}  // namespace staddle
