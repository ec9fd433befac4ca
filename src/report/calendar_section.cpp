// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/calendar_section.h"

#include <fmt/format.h>

#include <array>

#include "report/cells.h"
#include "staddle/report/operations.h"

namespace staddle {
namespace {

std::string name_of(CalendarDay day) {
  static constexpr std::array<const char*, 12> months{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                      "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  return fmt::format("{} {}, {}", months.at(static_cast<unsigned>(day.month()) - 1),
                     static_cast<unsigned>(day.day()), static_cast<int>(day.year()));
}

std::string details_of(const Operation& work) {
  return work.caution.empty() ? work.details : work.details + " " + work.caution;
}

}  // namespace

std::optional<Section> calendar_section(const Answer& answer) {
  if (!answer.dates.calendar()) return std::nullopt;
  Section section{
      "Calendar of the work",
      {"From the first to the last day on which each piece of work may be done. Seasons "
       "and lead times are common practice without a source, where nothing else is "
       "said."},
      {},
      {}};
  Table table{
      "", {{"from", "", true}, {"to", "", true}, {"work", "", true}, {"how", "", true}}, {}};
  for (const Operation& work : operations(answer.scenario, answer.advice)) {
    table.rows.push_back({cells::words(name_of(work.first)), cells::words(name_of(work.last)),
                          cells::words(work.what), cells::words(details_of(work))});
  }
  section.tables.push_back(std::move(table));
  return section;
}

}  // namespace staddle
