// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/advice_report.h"

#include <iterator>

#include "report/answer.h"

namespace staddle {
namespace {

void append(std::vector<Line>& lines, std::vector<Line> more) {
  lines.insert(lines.end(), std::make_move_iterator(more.begin()),
               std::make_move_iterator(more.end()));
}

}  // namespace

Report advice_report(const Scenario& scenario, const Advice& advice,
                     const std::vector<std::string>& storm_zones) {
  const Answer answer(scenario, advice, storm_zones);
  Report report;
  report.title = scenario.title;
  if (!scenario.purpose.empty()) report.head.push_back(scenario.purpose);
  if (!scenario.owner.empty()) report.head.push_back("Owner: " + scenario.owner);
  if (!scenario.prepared_by.empty()) report.head.push_back("Prepared by: " + scenario.prepared_by);
  append(report.lines, action_lines(answer));
  append(report.lines, value_lines(answer));
  append(report.lines, risk_lines(answer));
  if (!scenario.questions.empty()) {
    report.sections.push_back({"Please check", {}, {}, scenario.questions});
  }
  report.sections.push_back(plan_section(answer));
  report.sections.push_back(options_section(answer));
  for (const auto section : {guards_section, survival_section, tax_section, plots_section,
                             signs_section, storms_section}) {
    if (std::optional<Section> told = section(answer)) report.sections.push_back(std::move(*told));
  }
  report.sections.push_back(risks_section(answer));
  report.sections.push_back(assumptions_section(answer));
  report.sections.push_back(sources_section(answer));
  report.foot = foot_of(answer);
  return report;
}

}  // namespace staddle
