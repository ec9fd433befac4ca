// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/report/owner_report.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "report/calendar_section.h"
#include "report/owner_answer.h"
#include "report/stand_figures.h"
#include "signs/plain_words.h"
#include "staddle/report/plant_text.h"
#include "staddle/report/vary_text.h"
#include "staddle/signs/cautions.h"

namespace staddle {
namespace {

// What parts of an answer call their tax; a report tells them apart.
constexpr const char* tax_title = "Before and after federal tax";

// The report of one stand, section by section.
class StandReporting {
 public:
  explicit StandReporting(const StandAnswers& answers)
      : answers_(answers),
        answer_(answers.scenario, answers.advice, answers.storm_zones),
        telling_{answers, answer_} {}

  OwnerReport report() {
    const Scenario& scenario = answers_.scenario;
    OwnerReport report;
    report.title = scenario.title;
    report.subject = subject_of(answer_);
    report.purpose = scenario.purpose;
    report.owner = scenario.owner;
    report.prepared_by = scenario.prepared_by;
    report.key_figures = key_figures_of(answer_);
    report.summary = summary_of(answer_);
    report.answer = answer_groups_of(answer_);
    add_plan(report.sections);
    add_choices(report.sections);
    if (answers_.plant) add_planting(report.sections);
    add_risks(report.sections);
    report.assumptions = assumptions_section(answer_);
    report.assumptions.paragraphs.insert(report.assumptions.paragraphs.begin(),
                                         line_of(answer_, assumptions_topic));
    report.sources = growth_section(answer_);
    report.cautions = {"Cautions", {}, {}, standing_cautions()};
    report.foot = foot_of(answer_);
    return report;
  }

 private:
  using Sections = std::vector<Section>;
  using DrawTable = Figure (*)(const StandTelling&, Table);

  // Draws the table at `place` of a section above it, in its stead.
  void draw(Section& section, std::size_t place, DrawTable figure) const {
    Table table = std::move(section.tables[place]);
    section.tables.erase(section.tables.begin() + static_cast<std::ptrdiff_t>(place));
    section.figures.push_back(figure(telling_, std::move(table)));
  }

  void add_plan(Sections& sections) const {
    if (!answers_.scenario.questions.empty()) {
      sections.push_back({"Please check", {}, {}, answers_.scenario.questions});
    }
    sections.push_back({"The stand as it is", {line_of(answer_, stand_topic)}, {}, {}});
    Section options = options_section(answer_);
    draw(options, 0, options_figure);
    sections.push_back(std::move(options));
    Section plan = plan_section(answer_);
    Section money{"The money of the plan", {}, {}, {}};
    money.tables.push_back(std::move(plan.tables.back()));
    plan.tables.pop_back();
    draw(money, 0, cash_flow_figure);
    sections.push_back(std::move(plan));
    sections.push_back(std::move(money));
    add(sections, calendar_section(answer_));
    Section growth{"How the stand grows", {}, {}, {}};
    growth.figures = {basal_area_figure(telling_), tons_figure(telling_)};
    sections.push_back(std::move(growth));
  }

  void add_choices(Sections& sections) const {
    if (answers_.by_final_age) {
      Section ages{"When to make the final harvest", {}, {}, {}};
      ages.figures.push_back(final_age_figure(telling_));
      sections.push_back(std::move(ages));
    }
    if (answers_.first_thinning_map) {
      Section map{"When to thin first, and how much", {}, {}, {}};
      if (answer_.cuts.empty()) {
        map.paragraphs.push_back(
            "The plan does not thin at all, which is worth more than any field of this map.");
      }
      map.figures.push_back(first_thinning_figure(telling_));
      sections.push_back(std::move(map));
    }
    if (answers_.hold && answers_.hold->ledger.years.size() > 1) {
      Section hold{"What waiting earns", {}, {}, {}};
      hold.figures.push_back(hold_figure(telling_));
      sections.push_back(std::move(hold));
    }
  }

  void add_planting(Sections& sections) const {
    Report planted = plant_report(answers_.scenario, *answers_.plant);
    Section& first = planted.sections.front();
    first.title = "How to start the next stand";
    first.paragraphs.insert(first.paragraphs.begin(), planted.head.begin(), planted.head.end());
    for (Section& section : planted.sections) {
      if (section.title == "Cautions") continue;  // every report has them once
      if (section.title == tax_title) section.title = "The ways after federal tax";
      if (section.title == "The ways side by side") draw(section, 0, plant_figure);
      sections.push_back(std::move(section));
    }
  }

  void add(Sections& sections, std::optional<Section> section) const {
    if (section) sections.push_back(std::move(*section));
  }

  void add_drawn(Sections& sections, std::optional<Section> section, DrawTable figure) const {
    if (section && !section->tables.empty()) draw(*section, 0, figure);
    add(sections, std::move(section));
  }

  void add_risks(Sections& sections) const {
    std::optional<Section> storms = storms_section(answer_);
    if (storms && !answers_.advice.storm->thinnings.empty()) draw(*storms, 0, storm_figure);
    add(sections, std::move(storms));
    if (answers_.vary) add_prices(sections);
    add_drawn(sections, plots_section(answer_), plots_figure);
    add_drawn(sections, tax_section(answer_), tax_figure);
    add(sections, survival_section(answer_));
    add(sections, guards_section(answer_));
    add(sections, signs_section(answer_));
    sections.push_back(risks_section(answer_));
  }

  void add_prices(Sections& sections) const {
    Report varied = vary_report(answers_.scenario, *answers_.vary);
    Section& first = varied.sections.front();
    first.title = "Other prices and rates";
    first.paragraphs.insert(first.paragraphs.begin(), varied.head.begin(), varied.head.end());
    if (answers_.vary->base.best) first.figures.push_back(price_sets_figure(telling_));
    for (Section& section : varied.sections) {
      if (section.title == tax_title) section.title = "Prices and rates after federal tax";
      const bool spans = section.title == one_at_a_time_title;
      if (spans && answers_.vary->base.best) draw(section, 0, one_at_a_time_figure);
      sections.push_back(std::move(section));
    }
  }

  const StandAnswers& answers_;
  Answer answer_;
  StandTelling telling_;
};

}  // namespace

OwnerReport owner_report(const StandAnswers& answers, std::vector<InputFile> inputs) {
  OwnerReport report = StandReporting(answers).report();
  report.inputs = std::move(inputs);
  report.made_by = "staddle " STADDLE_VERSION;
  return report;
}

}  // namespace staddle
