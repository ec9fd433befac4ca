// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/owner_answer.h"

#include <fmt/format.h>

#include <iterator>

#include "report/what_to_do.h"
#include "signs/counted_words.h"
#include "signs/plain_words.h"

namespace staddle {
namespace {

KeyFigure what_now(const Answer& answer) {
  const auto& planted = answer.scenario.stand.planted;
  const Dates& dates = answer.dates;
  switch (answer.action) {
    case Action::plant:
      return {planted ? "Plant " + trees(*planted) + " an acre" : "Plant",
              "between December and early March"};
    case Action::thin:
      return {
          "Thin this season",
          "taking " + words::removal(answer.cuts.front()->removal_fraction) + " of the basal area"};
    case Action::thin_soon:
      return {"Thin by " + dates.name(answer.next_entry()), "this season or later"};
    case Action::sell:
      return {"Sell this season", "the whole stand"};
    case Action::sell_soon:
      return {"Sell by " + dates.name(answer.final_age()), "the whole stand"};
    case Action::nothing:
      break;
  }
  return {"Cut nothing now",
          fmt::format("{} {}", answer.cuts.empty() ? "final harvest" : "next thinning",
                      dates.on(answer.next_entry()))};
}

KeyFigure what_it_is_worth(const Answer& answer) {
  const Advice& advice = answer.advice;
  if (!advice.standing) {
    const MoneyPerAcre lev = advice.best.value.objective;
    return {words::money(lev) + " an acre",
            fmt::format("is what the land is worth so managed, at {} a year", answer.rate())};
  }
  if (answer.action == Action::sell) {
    return {words::money(advice.best.value.objective) + " an acre",
            "is what timber and land are worth; no plan is worth more"};
  }
  return {words::size_of(advice.advantage) + " an acre",
          fmt::format("{} than selling it all today ({} for the tract)",
                      advice.advantage < dollars_per_acre(0) ? "less" : "more",
                      words::size_of(advice.advantage * answer.area()))};
}

KeyFigure next_money(const Answer& answer) {
  const bool thins = !answer.cuts.empty();
  const HarvestRecord& harvest = answer.advice.best.final_harvest;
  const MoneyPerAcre revenue = thins ? answer.cuts.front()->revenue : harvest.revenue;
  const double standing = thins ? answer.cuts.front()->share_standing : harvest.share_standing;
  return {fmt::format("{} {}", words::tract_money(standing * revenue * answer.area()),
                      answer.dates.on(answer.next_entry())),
          fmt::format("from the {}, after fees ({} an acre)",
                      thins ? "next thinning" : "final harvest", words::money(revenue))};
}

}  // namespace

std::string subject_of(const Answer& answer) {
  const std::string acres_text = words::acres_of(answer.area());
  if (!answer.scenario.is_standing()) {
    return fmt::format("{} of bare land for {}", acres_text, answer.species());
  }
  const Age now = answer.dates.present();
  return fmt::format(
      "{} of {}, {} old{}", acres_text, answer.species(), words::counted(now.in(years), "year"),
      answer.dates.calendar() ? " in " + std::to_string(answer.dates.year_of(now)) : "");
}

std::vector<KeyFigure> key_figures_of(const Answer& answer) {
  return {what_now(answer), what_it_is_worth(answer), next_money(answer)};
}

std::string line_of(const Answer& answer, int topic) {
  for (const auto tell : {action_lines, value_lines, risk_lines}) {
    for (const Line& line : tell(answer)) {
      if (line.topic == topic) return line.text;
    }
  }
  return "";
}

std::vector<AnswerGroup> answer_groups_of(const Answer& answer) {
  std::vector<AnswerGroup> groups{{"What to do", {}},
                                  {"When, and what it brings", {}},
                                  {"What it earns", {}},
                                  {"What could go wrong", {}},
                                  {"Next month", {}}};
  const auto group_of = [](int topic) -> std::size_t {
    if (topic <= 2) return 0;
    if (topic <= 5) return 1;
    if (topic <= 8) return 2;
    return topic <= 11 ? 3 : 4;
  };
  for (const auto tell : {action_lines, value_lines, risk_lines}) {
    for (const Line& line : tell(answer)) {
      const bool told_elsewhere = line.topic == stand_topic || line.topic == assumptions_topic;
      if (!told_elsewhere) groups[group_of(line.topic)].lines.push_back(line.text);
    }
  }
  groups[3].lines.emplace_back(
      "All of this is a projection, neither an appraisal nor a price for the land; what it takes "
      "for granted stands further on.");
  std::erase_if(groups, [](const AnswerGroup& group) { return group.lines.empty(); });
  return groups;
}

}  // namespace staddle
