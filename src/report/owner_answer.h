// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "report/answer.h"
#include "staddle/report/owner_report.h"

// The first page of a report on one stand.
namespace staddle {

// "62 acres of loblolly pine, 15 years old in 2027".
std::string subject_of(const Answer& answer);
// What to do, what the plan is worth, and the next money, in a few words each.
std::vector<KeyFigure> key_figures_of(const Answer& answer);
// Of the opening lines those that a report tells after its first page.
inline constexpr int stand_topic = 1, assumptions_topic = 11;
std::string line_of(const Answer& answer, int topic);
// The other lines under the questions that they answer.
std::vector<AnswerGroup> answer_groups_of(const Answer& answer);
// The whole answer in at most eleven short lines.
std::vector<std::string> summary_of(const Answer& answer);

}  // namespace staddle
