// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "report/tract_by_hand.h"
#include "staddle/report/owner_report.h"
#include "staddle/report/stand_answers.h"

namespace staddle::by_hand {

// The answers to a scenario as a report takes them, without what spreadsheets and calendars
// do not read: the plan, the other numbers of thinnings, the owner's regimes.
inline StandAnswers answers_for(const Scenario& scenario) {
  StandAnswers answers;
  answers.scenario = scenario;
  answers.advice = advice_for(scenario);
  if (answers.scenario.tax) {
    answers.stand_case = make_advise_problem(scenario).value().stand.stand_case;
    answers.stand_case->land_value = answers.advice.land_value;
  }
  answers.options.push_back({"the plan", answers.advice.best, {}, {}});
  for (const Alternative& other : answers.advice.alternatives) {
    answers.options.push_back({std::to_string(other.thinnings) + " thinnings",
                               other.report,
                               other.loss_against_best,
                               {}});
  }
  for (const StatedAnswer& stated : answers.advice.regimes) {
    answers.options.push_back(
        {stated.report.name, stated.report, stated.loss_against_best, stated.breaks});
  }
  return answers;
}

inline OwnerReport report_on(const Scenario& scenario) {
  OwnerReport report;
  report.title = scenario.title;
  report.owner = scenario.owner;
  report.prepared_by = scenario.prepared_by;
  report.answer = {{"What to do", {"Thin in two years.", "Then wait."}}};
  report.cautions = {"Cautions", {}, {}, {"Felling is dangerous work."}};
  report.foot = "The arithmetic is exact; the growth is not.";
  report.made_by = "staddle";
  return report;
}

}  // namespace staddle::by_hand
