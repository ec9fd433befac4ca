// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/answer.h"

#include <fmt/format.h>

#include "report/plan_words.h"
#include "signs/plain_words.h"
#include "signs/risk_note.h"

namespace staddle {
namespace {

Action action_of(const Scenario& scenario, const Advice& advice, Age present) {
  if (!scenario.is_standing()) return Action::plant;
  const Regime& plan = advice.best_plan.regime;
  if (plan.final_harvest == present) return Action::sell;
  if (plan.thinnings.empty()) {
    return advice.near_best.final_harvest_low <= present ? Action::sell_soon : Action::nothing;
  }
  if (plan.thinnings.front().at == present) return Action::thin;
  const bool ripe = advice.readiness.judgement != SignVerdict::not_yet;
  const bool as_good_now = advice.near_best.first_thinning_low &&
                           *advice.near_best.first_thinning_low <= present;
  return ripe && as_good_now && advice.waiting_earns ? Action::thin_soon : Action::nothing;
}

}  // namespace

Answer::Answer(const Scenario& scenario_asked, const Advice& advice_given,
               const std::vector<std::string>& zones)
    : scenario(scenario_asked),
      advice(advice_given),
      storm_zones(zones),
      dates(scenario_asked),
      action(action_of(scenario_asked, advice_given, dates.present())),
      cuts(notes::cuts_of(advice_given.best)) {}

Yield Answer::total(const std::vector<Yield>& tons) const {
  Yield sum;
  for (const Yield& product : tons) sum += product;
  return sum;
}

std::string Answer::both(MoneyPerAcre amount, double share_standing) const {
  return fmt::format("{} an acre ({} for the tract)", words::size_of(amount),
                     words::size_of(share_standing * amount * area()));
}

std::string Answer::by_product(const std::vector<Yield>& tons) const {
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < tons.size(); ++i) {
    const std::string amount = words::number(tons[i].in(tons_per_acre));
    if (amount == "0" || amount.starts_with('-')) continue;
    const std::string unit = !parts.empty() ? "of " : amount == "1" ? "ton of " : "tons of ";
    parts.push_back(amount + " " + unit + words::product(scenario.products[i].name));
  }
  return parts.empty() ? "no tons of any product" : words::list(parts);
}

std::string Answer::cuts_brief(const Regime& regime) const {
  std::vector<std::string> parts;
  for (const Thinning& cut : regime.thinnings) {
    parts.push_back(dates.name(cut.at) + " " + words::removal(cut.removal_fraction));
  }
  return parts.empty() ? "none" : words::list(parts);
}

std::string Answer::brief(const Regime& regime) const { return plan_in_words(dates, regime); }

const EquationSet* Answer::equations() const {
  return std::get_if<EquationSet>(&scenario.stand.source);
}

std::string Answer::species() const {
  if (!equations()) return "pine";
  return equations()->species.substr(0, equations()->species.find(','));
}

std::string Answer::rate() const { return words::chance(scenario.costs.rate.per_year()); }

}  // namespace staddle
