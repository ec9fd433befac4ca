// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "report/answer.h"
#include "report/cells.h"
#include "signs/plain_words.h"

namespace staddle {
namespace {

Table yearly_losses(const Answer& answer) {
  Table table{"Loss to expect in one year, before and after each thinning", {}, {}};
  cells::add_date_columns(answer.dates, table.columns);
  for (const Column& column : std::vector<Column>{{"acres lost, year before", "percent"},
                                                  {"acres lost, year after", "percent"},
                                                  {"loss, year before", "$/acre"},
                                                  {"loss, year after", "$/acre"},
                                                  {"added by the cut in five years", "$/acre"},
                                                  {"worst single storm", "$/acre"},
                                                  {"which", "", true}}) {
    table.columns.push_back(column);
  }
  for (const StormAfterThinning& storm : answer.advice.storm->thinnings) {
    std::vector<Cell> row;
    cells::add_date(answer.dates, storm.at, row);
    row.push_back(cells::number(100.0 * storm.loss_share_before, 2));
    row.push_back(cells::number(100.0 * storm.loss_share_after, 2));
    row.push_back(cells::per_acre(storm.yearly_loss_before));
    row.push_back(cells::per_acre(storm.yearly_loss_after));
    row.push_back(cells::per_acre(storm.extra_expected_loss));
    row.push_back(cells::per_acre(storm.worst_event));
    row.push_back(cells::words(fmt::format("{}, {}", words::peril(storm.worst_peril),
                                           answer.dates.name(storm.worst_at))));
    table.rows.push_back(std::move(row));
  }
  return table;
}

Table damage(const Answer& answer) {
  Table table{"Share of the acres that a storm destroys where it strikes, first year after the cut",
              {{"thinning", "", true},
               {"storm", "", true},
               {"chance a year", "percent"},
               {"with the opening", "percent"},
               {"without it", "percent"}},
              {}};
  for (const StormAfterThinning& storm : answer.advice.storm->thinnings) {
    for (const StormAfterThinning::PerilShare& peril : storm.perils) {
      table.rows.push_back(
          {cells::words(answer.dates.name(storm.at)), cells::words(words::peril(peril.peril)),
           {fmt::format("{:.4g}", 100.0 * peril.annual_probability),
            100.0 * peril.annual_probability},
           cells::percent(peril.share_with), cells::percent(peril.share_without)});
    }
  }
  return table;
}

Table odds(const Answer& answer) {
  Table table{"If a thinning raises the odds of damage by less or more",
              {{"odds ratio, half removed, first year", "", true},
               {"advice", "", true},
               {"best plan", "", true},
               {"worth", "$/acre"}},
              {}};
  for (const StormAnswer::OddsRow& row : answer.advice.storm->odds_ratios) {
    table.rows.push_back({cells::words(row.odds_ratio ? fmt::format("{:.4g}", *row.odds_ratio)
                                                      : "as assumed by peril"),
                          cells::words(row.same_advice ? "the same" : "another"),
                          cells::words(answer.brief(row.best.regime)),
                          cells::per_acre(row.best.value.objective)});
  }
  return table;
}

std::string against_a_blind_plan(const Answer& answer) {
  const StormAnswer& storm = *answer.advice.storm;
  if (storm.blind_plan_loss <= dollars_per_acre(0.005)) {
    return "A plan made without thinking of storms would be the same.";
  }
  return fmt::format("A plan made without thinking of storms would be: {}. Priced with the storms "
                     "it is worth {} an acre less than this one.",
                     answer.brief(storm.blind_plan.regime), words::size_of(storm.blind_plan_loss));
}

std::string a_third_instead(const ThirdInstead& third, const Answer& answer) {
  return fmt::format("Keeping every cut to a third instead ({}) would cost {} an acre and {} {} an "
                     "acre of expected storm loss.",
                     answer.brief(third.best.regime), words::size_of(third.cost),
                     third.loss_saved < dollars_per_acre(0) ? "add" : "save",
                     words::size_of(third.loss_saved));
}

}  // namespace

std::optional<Section> storms_section(const Answer& answer) {
  if (!answer.advice.storm) return std::nullopt;
  const StormAnswer& storm = *answer.advice.storm;
  Section section{"Storms", {}, {}, {}};
  section.paragraphs.push_back(
      fmt::format("{}. All figures of this answer are expected values over its storms: chances, "
                  "damage and recovery are assumptions, set by file or zone, and no one can say "
                  "what will happen to this stand.",
                  answer.scenario.hazard.zone == "own"
                      ? "The perils are the owner's own"
                      : "The storm zone is " + answer.scenario.hazard.zone));
  section.paragraphs.push_back(against_a_blind_plan(answer));
  if (answer.advice.third_instead) {
    section.paragraphs.push_back(a_third_instead(*answer.advice.third_instead, answer));
  }
  if (!storm.thinnings.empty()) {
    section.tables.push_back(yearly_losses(answer));
    section.tables.push_back(damage(answer));
  }
  if (!storm.odds_ratios.empty()) section.tables.push_back(odds(answer));
  return section;
}

}  // namespace staddle
