// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "report/answer.h"
#include "report/level.h"
#include "report/signs_table.h"
#include "signs/plain_words.h"

namespace staddle {

std::optional<Section> signs_section(const Answer& answer) {
  const Advice& advice = answer.advice;
  if (advice.readiness.signs.empty()) return std::nullopt;
  Section section{"Is the stand ready to thin?", {}, {}, {}};
  if (!advice.readiness_judgement.empty()) {
    section.paragraphs.push_back(advice.readiness_judgement);
  }
  const Dates& dates = answer.dates;
  section.tables.push_back(signs_table(advice.readiness.signs, answer.scenario.ready_limits,
                                       [&dates](Age at) { return dates.name(at); }));
  section.items.push_back(how_signs_decide());
  return section;
}

Section risks_section(const Answer& answer) {
  Section section{"What could go wrong", {}, {}, {}};
  for (const RiskNote& note : answer.advice.risk_notes) {
    section.items.push_back(fmt::format("{}, {}: {}", words::capital(note.topic),
                                        level_in_words(note.level), note.text));
  }
  return section;
}

}  // namespace staddle
