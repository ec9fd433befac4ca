// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "report/tract_figures.h"
#include "report/tract_years.h"
#include "signs/counted_words.h"
#include "signs/plain_words.h"
#include "staddle/report/owner_report.h"
#include "staddle/report/tract_report.h"

namespace staddle {
namespace {

// The report of a tract, from the sentences and tables of its plan.
class TractReporting {
 public:
  TractReporting(const TractFile& tract, const TractSolution& solution)
      : tract_(tract), solution_(solution), plain_(tract_report(tract, solution)) {}

  OwnerReport report() {
    OwnerReport report;
    report.title = tract_.title;
    report.subject = plain_.lines.front().text;
    report.purpose = tract_.purpose;
    report.owner = tract_.owner;
    report.prepared_by = tract_.prepared_by;
    report.key_figures = key_figures();
    std::vector<std::string> in_short;
    for (std::size_t i = 1; i < plain_.lines.size(); ++i) {
      const std::string& text = plain_.lines[i].text;
      in_short.push_back(words::capital(text) + (text.ends_with('.') ? "" : "."));
    }
    report.summary = in_short;
    report.summary.push_back(next_month);
    report.answer = {{"What to do, when, and what it earns", in_short},
                     {"What could go wrong", {what_could_go_wrong()}},
                     {"Next month", {next_month}}};
    for (Section& section : plain_.sections) place(std::move(section), report);
    report.foot = plain_.foot;
    return report;
  }

 private:
  static constexpr const char* next_month =
      "Next month, have a registered forester walk the stands that are cut first and mark them, "
      "which takes about two months; then ask several buyers for sealed bids (they need four to "
      "six weeks), in a written contract of 12 to 24 months.";

  std::vector<KeyFigure> key_figures() const {
    if (solution_.periods.empty()) return {};
    Area cut;
    Money income;
    for (const TractPeriod& period : solution_.periods) {
      cut += period.final_harvest_acres;
      income += period.income;
    }
    return {{words::tract_money(solution_.present_value), "is what the plan is worth today"},
            {words::tract_money(income),
             fmt::format("income over {}, before costs",
                         words::counted(tract_.plan.years, "year"))},
            {words::counted(cut.in(acres), "acre"), "see their final harvest in these years"}};
  }

  std::string what_could_go_wrong() const {
    const bool storms = std::ranges::any_of(
        tract_.stands, [](const TractFileStand& stand) { return stand.scenario.hazard.active(); });
    std::string text = storms
                           ? "Storms are in these figures as averages; no single year will be like "
                             "them."
                           : "No storm zone was chosen, so storms are not in these figures.";
    return text +
           " A thinned stand is more exposed to wind and ice for about five years: never let a "
           "crew take more than the plan says. Prices stay as they are in all of this, and growth "
           "may be 15 to 20 percent off. It is neither an appraisal nor a price for the land.";
  }

  // Sections keep their order; those that every report has go where it has them.
  void place(Section section, OwnerReport& report) const {
    if (section.title == "Cautions") {
      report.cautions = std::move(section);
    } else if (section.title == "What this plan takes for granted") {
      report.assumptions = std::move(section);
    } else {
      if (section.title == "Money, acres and tons by period") draw(section);
      report.sections.push_back(std::move(section));
    }
  }

  void draw(Section& section) const {
    if (solution_.periods.empty()) return;
    section.figures.push_back(
        tract_money_figure(tract_, solution_, std::move(section.tables.front())));
    section.tables.erase(section.tables.begin());
    section.figures.push_back(tract_tons_figure(tract_, solution_));
    section.figures.push_back(tract_harvest_figure(tract_, solution_));
  }

  const TractFile& tract_;
  const TractSolution& solution_;
  Report plain_;
};

}  // namespace

OwnerReport owner_report(const TractFile& tract, const TractSolution& solution,
                         std::vector<InputFile> inputs) {
  OwnerReport report = TractReporting(tract, solution).report();
  report.inputs = std::move(inputs);
  report.made_by = "staddle " STADDLE_VERSION;
  return report;
}

}  // namespace staddle
